import type { Filled } from "../../../batch/contents";
import { bottleKinds } from "../../../../core/pack/bottle-kinds";
import { primingSugars as sugars } from "../../../../core/pack/priming";
import type { CellValue, NamedCells } from "../../../grid/read/named-cells";
import type { CellChange } from "../change-cells";

/** The packaging cells of the sheet as a form holds them, in the sheet's units. */
export interface PackagingInput {
  readonly into: "bottles" | "keg";
  /** Day number. */
  readonly packagedOn: Filled<number>;
  readonly carbonation: Filled<number>;
  readonly warmestBeer: Filled<number>;
  readonly sugar: string;
  readonly bottleVolume: Filled<number>;
  readonly bottleKind: string;
  readonly warmestStorage: Filled<number>;
  readonly loss: Filled<number>;
  readonly conditioning: Filled<number>;
  readonly kegTemperature: Filled<number>;
  readonly bottlesFilled: Filled<number>;
}

/** Cell and words for each field. */
const cells = {
  into: ["into", "bottles or keg"],
  packagedOn: ["packaged_on", "the day of packaging"],
  carbonation: ["carbonation", "the carbonation"],
  warmestBeer: ["warmest_beer", "the beer's warmest temperature"],
  sugar: ["priming_sugar", "the kind of sugar"],
  bottleVolume: ["bottle_volume", "what a bottle holds"],
  bottleKind: ["bottle_kind", "the kind of bottle"],
  warmestStorage: ["warmest_storage", "the warmest place"],
  loss: ["bottling_loss", "the loss in racking"],
  conditioning: ["conditioning_temperature", "the conditioning temperature"],
  kegTemperature: ["keg_temperature", "the keg's temperature"],
  bottlesFilled: ["bottles_filled", "the bottles filled"],
} as const satisfies Record<keyof PackagingInput, readonly [string, string]>;

const keys = Object.keys(cells) as (keyof PackagingInput)[];

/** The form as the sheet stands. */
export function packagingIn(sheet: NamedCells): PackagingInput {
  const of = Object.fromEntries(keys.map((key) => [key, sheet.number(cells[key][0])])) as Record<keyof PackagingInput, Filled<number>>;
  return {
    ...of,
    into: sheet.text("into") === "keg" ? "keg" : "bottles",
    sugar: sheet.text("priming_sugar") || sugars[0],
    bottleKind: sheet.text("bottle_kind") || bottleKinds[0],
  };
}

/** Every cell of the form with what it holds. */
export const packagingCells = (input: PackagingInput): CellChange[] =>
  keys.map((key) => {
    const [name, label] = cells[key];
    return { name, label, content: input[key] };
  });

/** The cells that the form would change: only those whose figure differs from the sheet's. */
export function packagingChanges(sheet: NamedCells, input: PackagingInput): CellChange[] {
  return packagingCells(input).filter(({ name, content }) => content !== "" && sheet.value(name) !== (content as CellValue));
}
