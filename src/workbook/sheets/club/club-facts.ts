import type { UnitSystem } from "../../../functions/quantities";
import type { BatchContents, Filled } from "../../batch/contents";
import type { CellContent } from "../../grid/plan/sheet-plan";
import { shareable } from "../../exchange/batch-file/shareable";
import { figure } from "../../batch/figures/on-its-sheet";
import type { BatchCell } from "../../batch/fields/cells";
import { convertUnits } from "../../batch/scale/convert-units";

/** One batch for the club sheet, with the name of the member as the user typed it: a file may claim anything. */
export interface ClubEntry {
  readonly member: string;
  readonly batch: BatchContents;
}

/** What the club sheet keeps of a batch, in this order: one row of its facts. */
export const factNames = [
  "member",
  "beer",
  "style",
  "brewedOn",
  "volume",
  "ogPlan",
  "ogReached",
  "fgPlan",
  "fgReached",
  "ibuPlan",
  "ibuReached",
  "colourPlan",
  "colourReached",
  "looks",
  "smells",
  "tastes",
  "feels",
  "again",
  "notes",
  "mark",
] as const;
export type FactName = (typeof factNames)[number];

/**
 * The facts of a batch in the units of the club sheet. Planned and reached figures are computed here from what the member
 * typed (ingredients, readings), so that a figure in a file need not be believed. Private words stay behind: a club sheet is
 * read by the club, and a batch of this workbook comes here without having been through a file.
 */
export function clubFacts({ member, batch }: ClubEntry, units: UnitSystem): Record<FactName, CellContent> {
  const own = convertUnits(shareable(batch, { prices: true }), units);
  const { tasting } = own;
  const shown = (name: BatchCell): Filled<number> => figure(own, name) ?? "";
  return {
    member,
    beer: own.batchName,
    style: own.style,
    brewedOn: own.brewedOn === 0 ? "" : own.brewedOn,
    volume: own.volume,
    ogPlan: shown("og_plan"),
    ogReached: shown("og_shown"),
    fgPlan: shown("fg_plan"),
    fgReached: shown("fg_reached"),
    ibuPlan: shown("ibu_plan"),
    ibuReached: shown("ibu_reached"),
    colourPlan: shown("colour_plan"),
    colourReached: shown("colour_reached"),
    looks: tasting.looks.score,
    smells: tasting.smells.score,
    tastes: tasting.tastes.score,
    feels: tasting.feels.score,
    again: tasting.again.score,
    notes: tasting.notes,
    mark: own.id,
  };
}
