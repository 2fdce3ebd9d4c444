import type { UnitSystem } from "../../../functions/quantities";
import type { BatchContents, Filled } from "../../batch/contents";
import type { CellContent } from "../../grid/plan/sheet-plan";
import { shareable } from "../../exchange/batch-file/shareable";
import { plannedFigures } from "../../batch/figures/planned-figures";
import { reachedFigures } from "../../batch/figures/reached-figures";
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
  const planned = plannedFigures(own);
  const reached = reachedFigures(own);
  const { tasting } = own;
  const or = (value: number | undefined): Filled<number> => value ?? "";
  return {
    member,
    beer: own.batchName,
    style: own.style,
    brewedOn: own.brewedOn === 0 ? "" : own.brewedOn,
    volume: own.volume,
    ogPlan: or(planned.og),
    ogReached: or(reached.og),
    fgPlan: or(planned.fg),
    fgReached: or(reached.fg),
    ibuPlan: or(planned.ibu),
    ibuReached: or(reached.ibu),
    colourPlan: or(planned.colour),
    colourReached: or(reached.colour),
    looks: tasting.looks.score,
    smells: tasting.smells.score,
    tastes: tasting.tastes.score,
    feels: tasting.feels.score,
    again: tasting.again.score,
    notes: tasting.notes,
    mark: own.id,
  };
}
