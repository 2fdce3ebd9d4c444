import type { CellContent } from "../plan/sheet-plan";
import type { NamedCells } from "../read/named-cells";
import { newBatchId } from "../batch/batch-id";

/** A named workings cell that a later plan has and an earlier one has not. */
export interface AddedCell {
  readonly name: string;
  readonly label: string;
  /** Where the plan puts it: rows down and columns right of the cell named `gylebook`. */
  readonly labelAt: readonly [down: number, right: number];
  readonly at: readonly [down: number, right: number];
  content(sheet: NamedCells): CellContent;
  /** What it is for, in words for the brewer. */
  readonly purpose: string;
}

/** What the sheets of one version of the plan have beyond those of the version before. */
export interface MigrationStep {
  readonly to: number;
  readonly adds: readonly AddedCell[];
}

/** One step for every version of the plan after the first; none is ever changed or taken out. */
export const steps: readonly MigrationStep[] = [
  {
    to: 2,
    adds: [
      {
        name: "batch_id", label: "Tells this batch from every other:", labelAt: [0, 2], at: [0, 3],
        content: () => newBatchId(), purpose: "a mark that tells the batch from every other",
      },
      {
        name: "kit_name", label: "Planned on the kit:", labelAt: [1, -1], at: [1, 0],
        // The first plan knew no kits by name: its figures are the sheet's own.
        content: () => "", purpose: "a place for the name of its kit",
      },
    ],
  },
];

/** Everything that a sheet of this version lacks, oldest first. */
export const missingSince = (version: number): readonly AddedCell[] => steps.filter(({ to }) => to > version).flatMap(({ adds }) => adds);
