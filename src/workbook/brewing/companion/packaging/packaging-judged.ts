import type { BatchSheet } from "../../../batch/read/batch-sheets";
import { CellError } from "../../../../functions/cell-error";
import { dayLimits } from "../../../batch/describe/day-limits";
import { partNames, partRow } from "../../../batch/fields/blocks/parts";
import { blocksOnSheet } from "../../../batch/read/blocks-on-sheet";
import { finishedLine } from "../../../batch/rules/finished";
import { pressureLine } from "../../../batch/rules/pressure";
import { laidOver, madeIn, saidBy, type Said } from "../../../batch/rules/what-it-says";
import { OnlyTheSheetKnows } from "../../../grid/evaluate/evaluate";
import type { LaidOver } from "../../../grid/evaluate/laid-over";
import type { Asked } from "../ask";
import { packagingCells, type PackagingInput } from "./packaging-form";

/** Figures that a form is judged by, and that it shows: always by today's formulas. */
const doors = [
  ...["pressure_verdict", "residual_gas", "sugar_mass", "bottle_pressure", "keg_pressure", "bottles_ready", "first_taste"],
  ...partNames.flatMap((name) => (["verdict", "sugar", "pressure", "inside"] as const).map((figure) => `part_${name}_${figure}`)),
];

/** A form without its day yet is judged as if it were packaged some day: what must not be filled must not be filled any day. */
const someDay = Math.floor(dayLimits[1]);

/** The sheet with a form laid over it. */
export const packagedAs = (sheet: BatchSheet, input: PackagingInput): LaidOver =>
  laidOver(sheet, packagingCells(sheet, { ...input, packagedOn: input.packagedOn === "" ? someDay : input.packagedOn }), doors);

/** What the sheet's two lines about the packaging would say. */
export const saidOfPackaging = (world: LaidOver): Said[] =>
  [finishedLine, pressureLine(madeIn(world.cellsOfSheet), blocksOnSheet(world.cellsOfSheet))].flatMap((line) => saidBy(world, line));

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

/** A part of the batch that is packaged by itself, as the sheet judges it. */
export interface JudgedPart {
  readonly name: string;
  readonly volume: number;
  readonly into: string;
  readonly verdict: string;
  /** For its bottles. */
  readonly sugar: Asked;
  /** To set on its keg, or in its bottles at their warmest. */
  readonly pressure: Asked;
  /** Whether the sheet lets every figure stand that it needs. */
  readonly isGiven: boolean;
}

/** The parts that the beer is packaged in; undefined where it is packaged as one. */
export function partsOf(world: LaidOver): readonly JudgedPart[] | undefined {
  if (!blocksOnSheet(world.cellsOfSheet).includes("partsOfWort")) return undefined;
  const parts = partNames.flatMap((part, index): JudgedPart[] => {
    const cell = (area: string, row: number) => world.ask(`=INDEX(${area},${row},${index + 1})`)[0]?.[0] ?? "";
    const volume = cell("wort_parts", partRow("volume"));
    if (typeof volume !== "number" || volume <= 0) return [];
    const words = (value: ReturnType<typeof cell>): string => (typeof value === "string" ? value : "");
    const [name, into, verdict] = [
      words(cell("wort_parts", partRow("name"))),
      words(cell("parts_into", 1)),
      world.value(`part_${part}_verdict`),
    ];
    const [sugar, pressure] = [
      wouldShow(world, `part_${part}_sugar`),
      wouldShow(world, into === "keg" ? `part_${part}_pressure` : `part_${part}_inside`),
    ];
    return [
      {
        name: name === "" ? `Part ${index + 1}` : name,
        volume,
        into,
        verdict: verdict instanceof CellError ? verdict.message : String(verdict ?? ""),
        sugar,
        pressure,
        isGiven: pressure.value !== undefined && (into === "keg" || sugar.value !== undefined),
      },
    ];
  });
  return parts.length === 0 ? undefined : parts;
}

export function packagingParts(sheet: BatchSheet, input: PackagingInput): readonly JudgedPart[] | undefined {
  try {
    return partsOf(packagedAs(sheet, input));
  } catch (problem) {
    // Then the safety says that only the sheet can work it out, and nothing is offered.
    if (problem instanceof OnlyTheSheetKnows) return undefined;
    throw problem;
  }
}

/** Whether the sheet would let a pressure, and in bottles a sugar, stand: the one door that every figure goes through. */
export const isAllowed = (world: LaidOver, { into }: Pick<PackagingInput, "into">): boolean =>
  partsOf(world)?.every(({ isGiven }) => isGiven) ??
  (into === "keg" ? ["keg_pressure"] : ["bottle_pressure", "sugar_mass"]).every((name) => wouldShow(world, name).value !== undefined);

/** The sheet's verdict in words; an error's own words, "" where something is missing. */
export function verdictOf(world: LaidOver): string {
  const cell = world.value("pressure_verdict");
  return cell instanceof CellError ? cell.message : String(cell ?? "");
}
