import type { BatchSheet } from "./batch-sheets";
import type { Standing } from "../sheet/plan";
import { blocksOnSheet } from "./blocks-on-sheet";

/** The sheet's own tables and the lines of its clock, which may have fewer rows than a new sheet's, or more; and its blocks, in whatever order they came. */
export const standing = (sheet: BatchSheet): Standing => ({
  tableRows: Object.fromEntries(
    (
      [
        ["Malt", "malt"],
        ["Hops", "hop_plan"],
        ["Readings", "readings"],
        ["Steps", "steps"],
        ["Timeline", "happened"],
      ] as const
    ).map(([table, name]) => [table, sheet.area(name).to.row - sheet.area(name).from.row + 1]),
  ),
  blocks: blocksOnSheet(sheet),
});
