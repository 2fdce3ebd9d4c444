// @ts-check
import { BaseSequencer } from "vitest/node";

/** @typedef {import("vitest/node").TestSpecification} TestSpecification */

/**
 * The order of the test files: project by project as they are listed here, so that files of one kind share a process; within a project
 * those that took longest last time come first, and where nothing is kept from a last time the largest files, so that the workers end
 * together. Vitest keeps the times by itself, below `.cache`; nobody has to write a list.
 * @param {readonly string[]} projects
 */
export function slowestFirst(projects) {
  return class SlowestFirst extends BaseSequencer {
    /**
     * @override
     * @param {TestSpecification[]} files
     */
    async sort(files) {
      const place = (/** @type {TestSpecification} */ { project }) => projects.indexOf(project.name);
      return (await super.sort(files)).sort((one, other) => place(one) - place(other));
    }
  };
}
