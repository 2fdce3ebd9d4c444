import { CellError } from "../../../../functions/cell-error";
import { dayLimits } from "../../../batch/describe/day-limits";
import { finishedLine } from "../../../batch/rules/finished";
import { pressureLine } from "../../../batch/rules/pressure";
import { laidOver, madeIn, saidBy, type Said } from "../../../batch/rules/what-it-says";
import { OnlyTheSheetKnows } from "../../../grid/evaluate/evaluate";
import type { LaidOver } from "../../../grid/evaluate/laid-over";
import type { NamedCells } from "../../../grid/read/named-cells";
import type { Asked } from "../ask";
import { packagingCells, type PackagingInput } from "./packaging-form";

/** Figures that a form is judged by, and that it shows: always by today's formulas. */
const doors = ["pressure_verdict", "residual_gas", "sugar_mass", "bottle_pressure", "keg_pressure", "bottles_ready", "first_taste"];

/** A form without its day yet is judged as if it were packaged some day: what must not be filled must not be filled any day. */
const someDay = Math.floor(dayLimits[1]);

/** The sheet with a form laid over it. */
export const packagedAs = (sheet: NamedCells, input: PackagingInput): LaidOver =>
  laidOver(sheet, packagingCells(sheet, { ...input, packagedOn: input.packagedOn === "" ? someDay : input.packagedOn }), doors);

/** What the sheet's two lines about the packaging would say. */
export const saidOfPackaging = (world: LaidOver): Said[] =>
  [finishedLine, pressureLine(madeIn(world.cellsOfSheet))].flatMap((line) => saidBy(world, line));

/** What a named cell would show: a number, or why there is none; "" where something is not filled in or it is withheld. */
export function wouldShow(world: LaidOver, name: string): Asked {
  try {
    const cell = world.value(name);
    return typeof cell === "number" ? { value: cell } : { problem: cell instanceof CellError ? cell.message : "" };
  } catch (problem) {
    if (problem instanceof OnlyTheSheetKnows) return { problem: "only the sheet can work it out" };
    throw problem;
  }
}

/** Whether the sheet would let a pressure, and in bottles a sugar, stand: the one door that every figure goes through. */
export const isAllowed = (world: LaidOver, { into }: Pick<PackagingInput, "into">): boolean =>
  (into === "keg" ? ["keg_pressure"] : ["bottle_pressure", "sugar_mass"]).every((name) => wouldShow(world, name).value !== undefined);

/** The sheet's verdict in words; an error's own words, "" where something is missing. */
export function verdictOf(world: LaidOver): string {
  const cell = world.value("pressure_verdict");
  return cell instanceof CellError ? cell.message : String(cell ?? "");
}
