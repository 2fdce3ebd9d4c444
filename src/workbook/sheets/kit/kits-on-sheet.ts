import { quantity, type UnitSystem } from "../../../functions/quantities";
import type { Kit, Method } from "../../batch/contents";
import { newBatch, usualKit, type NewBatchChoices } from "../../batch/new-batch";
import type { NamedCells } from "../../grid/read/named-cells";
import type { Position } from "../../grid/plan/addresses";
import { convertKit } from "../../batch/scale/convert-units";
import { fixedRows, handMeasured, learnedRows, quantityOf, type LearnedKey } from "./kit-rows";
import { kitMark, mostKits } from "./kit-plan";

/** One kit of the kit sheet that has a name. */
export interface KitOnSheet {
  /** 1 is the usual one. */
  readonly number: number;
  readonly name: string;
  readonly units: UnitSystem;
  /** What a new batch on it starts from, in its units. */
  readonly kit: Kit;
}

export const isKitSheet = (sheet: NamedCells): boolean => sheet.has(kitMark) && sheet.has("kit_1_name");

export const unitsOfKits = (sheet: NamedCells): UnitSystem => (sheet.text("kit_units") === "us" ? "us" : "metric");

export function kitsOnSheet(sheet: NamedCells): KitOnSheet[] {
  const units = unitsOfKits(sheet);
  return Array.from({ length: mostKits }, (_, index) => index + 1).flatMap((number) => {
    const name = sheet.has(`kit_${number}_name`) ? sheet.text(`kit_${number}_name`) : "";
    if (name === "") return [];
    const used = sheet.block(`kit_${number}_used`).map(([value]) => value);
    const keys = [...learnedRows, ...fixedRows].map(({ key }) => key);
    const figures = Object.fromEntries(
      keys.flatMap((key, index) => (key !== "hydrometerOffset" && typeof used[index] === "number" ? [[key, used[index]]] : [])),
    );
    return [{ number, name, units, kit: { ...usualKit[units], ...figures } }];
  });
}

/** The cell under “Take learned” of a figure; undefined where the sheet has no row for it. */
export function takePlace(sheet: NamedCells, number: number, key: LearnedKey): Position | undefined {
  const index = [...learnedRows, ...fixedRows].findIndex((row) => row.key === key);
  const [take, used] = [sheet.area(`kit_${number}_take`), sheet.area(`kit_${number}_used`)];
  const row = used.from.row + index;
  return index < 0 || row > used.to.row ? undefined : { row, column: take.from.column };
}

/** A new batch on a kit of the brewer's, in whatever units the batch has; how the grain is soaked belongs to the recipe, not to the kit. */
export function onKit(
  choices: NewBatchChoices,
  { name, units, kit }: Pick<KitOnSheet, "name" | "units" | "kit">,
): Pick<ReturnType<typeof newBatch>, "kit" | "kitName"> {
  const usual = newBatch(choices).kit;
  return { kitName: name, kit: { ...convertKit(kit, units, choices.units), ...recipePart(usual, choices.method) } };
}

/** Steeping wins what it wins, whatever the kit. */
const recipePart = ({ soakTemperature, soakMinutes, grainEfficiencyPercent }: Kit, method: Method): Partial<Kit> => ({
  soakTemperature,
  soakMinutes,
  ...(method === "extract" && { grainEfficiencyPercent }),
});

/** What the brewer measured by hand on one kit, in the core's units. */
export function handFigures(sheet: NamedCells, kitName: string): Readonly<Record<string, number[]>> {
  const units = unitsOfKits(sheet);
  const found: Record<string, number[]> = {};
  for (const [kit = "", , value, what = ""] of sheet.block("kit_readings")) {
    const key: LearnedKey | undefined = handMeasured[String(what) as keyof typeof handMeasured];
    if (typeof value !== "number" || key === undefined || String(kit).trim().toLowerCase() !== kitName.toLowerCase()) continue;
    (found[key] ??= []).push(key === "hydrometerOffset" ? value - 1 : quantity(quantityOf(key)).toCore(value, units));
  }
  return found;
}
