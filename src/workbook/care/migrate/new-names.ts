import type { PlanVersion } from "../../batch/describe/plan-version";
import { newCells } from "../../batch/fields/cells";

/** Names of single cells that each version of the plan has beyond the one before. */
export const newNames: Readonly<Record<number, readonly string[]>> = Object.fromEntries(
  ([2, 3, 4] as const satisfies readonly PlanVersion[]).map((version) => [version, newCells(version)]),
);

/** Every name that a sheet of this version lacks, oldest first. */
export const namesSince = (version: number): readonly string[] =>
  Object.entries(newNames).flatMap(([to, names]) => (Number(to) > version ? names : []));
