import type { UnitSystem } from "../../../functions/quantities";
import { cellText } from "../../grid/words/cell-text";
import { columnLetters } from "../../grid/plan/addresses";
import type { SheetBuilder } from "../../grid/plan/sheet-builder";
import type { CellContent, NumberFormat } from "../../grid/plan/sheet-plan";
import { clubFacts, factNames, type ClubEntry, type FactName } from "./club-facts";

/** Marks a sheet that keeps members' facts, and tells which plan it follows. */
export const clubMark = "gylebook_club";
export const clubVersion = 1;
/** Beside it: the sheet is a class's, which sets the predicted beside the measured. */
export const classMark = "gylebook_class";
export const factsName = "club_facts";
export const firstFactRow = 4;
/** No sheet holds more batches. */
export const mostBatches = 40;
/** So many more are made room for at a time. */
const step = 10;

/** Room for so many batches, and some that are still to come. */
export const roomOf = (batches: number): number => Math.min(mostBatches, Math.max(step, step * Math.ceil(batches / step)));

/** What stands above each fact, right of the printed page. */
export const factHeadings: Readonly<Record<FactName, string>> = {
  member: "Member",
  beer: "Beer",
  style: "Style",
  brewedOn: "Brewed on",
  volume: "Volume",
  ogPlan: "OG plan",
  ogReached: "OG",
  fgPlan: "FG plan",
  fgReached: "FG",
  ibuPlan: "IBU plan",
  ibuReached: "IBU",
  colourPlan: "Colour plan",
  colourReached: "Colour",
  looks: "Looks",
  smells: "Smells",
  tastes: "Tastes",
  feels: "Feels",
  again: "Again",
  notes: "Notes",
  mark: "Mark",
};
export const factFormats: Partial<Record<FactName, NumberFormat>> = {
  brewedOn: "date",
  volume: "two",
  ogPlan: "gravity",
  ogReached: "gravity",
  fgPlan: "gravity",
  fgReached: "gravity",
  ibuPlan: "one",
  ibuReached: "one",
  colourPlan: "one",
  colourReached: "one",
};

/** The row of facts of a batch as it is written, words as words. */
export function factRow(entry: ClubEntry, units: UnitSystem): CellContent[] {
  const facts = clubFacts(entry, units);
  return factNames.map((name) => (typeof facts[name] === "string" ? cellText(facts[name]) : facts[name]));
}

/** What a sheet over members' facts is made of. */
export interface FactsOnSheet {
  readonly sheetName: string;
  readonly units: UnitSystem;
  /** One for each batch, in the order of `factNames`, as they are written. */
  readonly rows: readonly (readonly CellContent[])[];
}

/** To the right of the printed page: what came from the files, one row a batch, for reading and correcting. */
export function putFacts(b: SheetBuilder, { units, rows }: FactsOnSheet, firstColumn: number): void {
  const at = (place: number): string => columnLetters(firstColumn + place);
  b.put(at(0), "From the members' files, a row a batch. Units:", { style: "hint" }, 1);
  b.put(at(2), units, { style: "hint", name: "club_units" }, 1);
  b.put(at(3), "Plan of this sheet:", { style: "hint" }, 1);
  b.put(at(5), clubVersion, { style: "hint", name: clubMark }, 1);
  const room = roomOf(rows.length);
  for (const [index, fact] of factNames.entries()) {
    const format = factFormats[fact];
    b.put(at(index), factHeadings[fact], { style: format ? "headingRight" : "heading" }, firstFactRow - 1);
    for (let row = 0; row < room; row += 1)
      b.put(at(index), rows[row]?.[index] ?? "", { style: format ? "input" : "inputText", ...(format && { format }) }, firstFactRow + row);
  }
  b.name(factsName, `${at(0)}${firstFactRow}:${at(factNames.length - 1)}${firstFactRow + room - 1}`);
}
