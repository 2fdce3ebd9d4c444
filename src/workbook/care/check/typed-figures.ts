import { columnLetters } from "../../grid/plan/addresses";
import { quantity, type UnitSystem } from "../../../functions/quantities";
import { unitWords } from "../../batch/unit-words";
import type { NamedCells } from "../../grid/read/named-cells";
import type { Finding } from "./finding";

/** A number somebody typed, with its cell. */
interface Typed {
  readonly address: string;
  readonly value: number;
}

const at = (sheet: NamedCells, row: number, column: number): Typed[] => {
  const value = sheet.at(row, column);
  return typeof value === "number" ? [{ address: `${columnLetters(column)}${row}`, value }] : [];
};

/** Numbers of a name, from `column` columns to its right. */
function typed(sheet: NamedCells, name: string, column = 0): Typed[] {
  if (!sheet.has(name)) return [];
  const { from, to } = sheet.area(name);
  return Array.from({ length: to.row - from.row + 1 }, (_, index) => at(sheet, from.row + index, from.column + column)).flat();
}

/** Temperatures that a brewer may meet in each place, °C: beyond them it is the other scale, or a slip. */
const temperatures: readonly (readonly [name: string, column: number, low: number, high: number, words: string])[] = [
  ["soak_temperature", 0, 40, 85, "Steeping or mashing"],
  ["tap_temperature", 0, 0.5, 40, "Tap water"],
  ["grain_temperature", 0, -10, 45, "Grain"],
  ["pitch_temperature", 0, 2, 42, "Pitching"],
  ["ferment_from", 0, 0, 40, "Fermenting from"],
  ["ferment_to", 0, 0, 45, "Fermenting to"],
  ["calibrated_at", 0, 10, 30, "Calibration of the hydrometer"],
  ["og_temperature", 0, 0, 100, "Sample"],
  ["readings", 2, -2, 100, "Sample"],
  ["beer_temperatures", 0, -4, 45, "Beer"],
  ["warmest_beer", 0, -2, 45, "Beer"],
  ["warmest_storage", 0, 0, 50, "Storage"],
  ["conditioning_temperature", 0, 0, 40, "Conditioning"],
  ["keg_temperature", 0, -3, 36, "Keg"],
];

/** Figures in the wrong unit, or that no beer can have. */
export function typedFigures(sheet: NamedCells, units: UnitSystem): Finding[] {
  const found = (weight: Finding["weight"], { address }: Typed, words: string, rule?: string): Finding => ({
    sheet: sheet.sheetName,
    address,
    weight,
    words,
    ...(rule !== undefined && { rule }),
  });
  const { toCore } = quantity("temperature");
  const [own, other] = units === "us" ? (["°F", "°C"] as const) : (["°C", "°F"] as const);
  const findings: Finding[] = [];
  for (const [name, column, low, high, words] of temperatures) {
    for (const cell of typed(sheet, name, column)) {
      const celsius = toCore(cell.value, units);
      if (celsius >= low && celsius <= high) continue;
      const asOther = toCore(cell.value, units === "us" ? "metric" : "us");
      findings.push(
        found(
          "look",
          cell,
          `${words} at ${String(cell.value)} ${own}?${asOther >= low && asOther <= high ? ` That looks like ${other}; this sheet is in ${own}.` : " Check the figure and its unit."}`,
        ),
      );
    }
  }
  for (const cell of typed(sheet, "bottle_volume")) {
    const millilitres = quantity("bottleVolume").toCore(cell.value, units);
    if (millilitres < 90 || millilitres > 5500)
      findings.push(
        found(
          "look",
          cell,
          `A bottle of ${String(cell.value)} ${units === "us" ? "fl oz? That looks like mL" : "mL? That looks like fl oz"}; this sheet is in ${units === "us" ? "fl oz" : "mL"}.`,
        ),
      );
  }
  for (const cell of typed(sheet, "hop_alpha")) {
    if (cell.value > 25)
      findings.push(
        found(
          "look",
          cell,
          `An alpha acid of ${String(cell.value)} %? No hop has so much: is a decimal point missing?`,
          "hops.alpha-too-high",
        ),
      );
    else if (cell.value > 0 && cell.value < 0.3)
      findings.push(
        found(
          "look",
          cell,
          `An alpha acid of ${String(cell.value)} %? Type it as on the packet: ${String(Number((cell.value * 100).toPrecision(3)))}, not a share of one.`,
        ),
      );
    else if (cell.value < 0) findings.push(found("look", cell, "An alpha acid below nothing cannot be."));
  }
  for (const [name, column, words] of [
    ["malt", 1, "A yield"],
    ["attenuation", 0, "An attenuation"],
    ["viability", 0, "Yeast alive"],
    ["grain_efficiency", 0, "Sugar won from the grain"],
    ["heat_efficiency", 0, "Heat that gets in"],
  ] as const) {
    for (const cell of typed(sheet, name, column)) {
      if (cell.value > 100) findings.push(found("look", cell, `${words} of ${String(cell.value)} %? More than all of it cannot be.`));
      else if (cell.value > 0 && cell.value <= 1)
        findings.push(
          found(
            "look",
            cell,
            `${words} of ${String(cell.value)} %? Type ${String(Number((cell.value * 100).toPrecision(4)))} for ${String(Number((cell.value * 100).toPrecision(4)))} %.`,
          ),
        );
    }
  }
  for (const [name, column] of [
    ["volume", 0],
    ["top_up", 0],
    ["malt", 0],
    ["hops", 0],
    ["volume_reached", 0],
    ["bottles_filled", 0],
    ["boil_off", 0],
    ["kettle_loss", 0],
  ] as const) {
    for (const cell of typed(sheet, name, column))
      if (cell.value < 0) findings.push(found("look", cell, `${String(cell.value)} in ${cell.address}: less than nothing cannot be.`));
  }
  for (const cell of typed(sheet, "scores"))
    if (cell.value < 1 || cell.value > 5) findings.push(found("look", cell, `A score of ${String(cell.value)}? Scores go from 1 to 5.`));
  return findings;
}

/** The words beside the figures were written with the sheet: they tell which units it was made in. */
export function changedUnits(sheet: NamedCells, units: UnitSystem): Finding[] {
  if (!sheet.has("volume") || !sheet.has("units")) return [];
  const typedUnits = sheet.text("units");
  const { from } = sheet.area("volume");
  const beside = String(sheet.at(from.row, from.column + 1)).trim();
  const made = (["metric", "us"] as const).find((system) => unitWords(system).volume === beside);
  const address = sheet.range("units").split(":")[0] ?? "";
  if (made !== undefined && (made !== units || typedUnits.toLowerCase() !== made)) {
    return [
      {
        sheet: sheet.sheetName,
        address,
        weight: "stop",
        words: `This sheet was made in ${beside}, but its units cell says “${typedUnits}”: every figure on it is misread, the bottle pressure too. Type “${made}” again; for other units use Scale and copy.`,
      },
    ];
  }
  return [];
}
