import { hopPlaces } from "../../../core/hops/places";
import { block, isWithin, position } from "../../grid/plan/addresses";
import type { SheetPlan } from "../../grid/plan/sheet-plan";
import type { CellValue, NamedCells } from "../../grid/read/named-cells";
import type { Finding } from "./finding";
import { moved, placeMap } from "./place-map";

const shown = (value: CellValue): string =>
  typeof value === "string" ? `the text “${value.length > 30 ? `${value.slice(0, 30)}…` : value}”` : String(value);

/** Cells that should calculate and hold something typed, or nothing, instead. A formula of the brewer's own stays. */
export function overwrittenFormulas(sheet: NamedCells, plan: SheetPlan): Finding[] {
  const place = placeMap(plan, sheet);
  const named = new Map(plan.names.filter(({ range }) => !range.includes(":")).map(({ name, range }) => [range, name]));
  return plan.cells.flatMap(({ address: planned, content }): Finding[] => {
    if (typeof content !== "string" || !content.startsWith("=")) return [];
    const address = place(planned);
    if (address === undefined) return [];
    const { row, column } = position(address);
    const was = sheet.formulaAt(row, column);
    if (typeof was === "string" && was.startsWith("=")) return [];
    const formula = moved(content, place);
    const name = named.get(planned);
    const what = name === undefined ? address : `${address} (${name})`;
    return [
      {
        sheet: sheet.sheetName,
        address,
        weight: "look",
        words:
          was === ""
            ? `${what} should calculate, but its formula was deleted, or its row was put in.`
            : `${what} should calculate, but ${shown(was)} was typed over its formula: it does not follow the batch any more.`,
        ...(formula !== undefined && { repair: { sheet: sheet.sheetName, address, formula, was, kind: "overwritten" as const } }),
      },
    ];
  });
}

/** Texts where a number belongs: they look right and count as nothing. */
export function textNumbers(sheet: NamedCells, plan: SheetPlan): Finding[] {
  const place = placeMap(plan, sheet);
  const hopMinutes = plan.names.find(({ name }) => name === "hop_minutes")?.range;
  const isHopPlace = (planned: string, value: string): boolean =>
    hopMinutes !== undefined &&
    isWithin(block(hopMinutes), position(planned)) &&
    hopPlaces.some((word) => word === value.trim().toLowerCase());
  const numeric = plan.cells.filter(
    ({ style, format, content }) =>
      style === "input" &&
      format !== undefined &&
      format !== "general" &&
      format !== "text" &&
      !(typeof content === "string" && content.startsWith("=")),
  );
  return numeric.flatMap(({ address: planned, format }): Finding[] => {
    const address = place(planned);
    if (address === undefined) return [];
    const { row, column } = position(address);
    const value = sheet.at(row, column);
    if (typeof value !== "string" || value.trim() === "" || String(sheet.formulaAt(row, column)).startsWith("=")) return [];
    if (isHopPlace(planned, value)) return [];
    const wanted = format === "date" ? "a date" : format === "time" ? "a time" : "a number";
    return [
      {
        sheet: sheet.sheetName,
        address,
        weight: "look",
        words: `${address} holds ${shown(value)} where ${wanted} belongs, so it counts as not filled in. Type ${wanted} alone, without a unit, with the decimal sign of your Excel.`,
      },
    ];
  });
}

/** Names that formulas speak of and that are gone with their cells. */
export function deletedNames(sheet: NamedCells, plan: SheetPlan): Finding[] {
  const gone = plan.names.map(({ name }) => name).filter((name) => !sheet.has(name));
  if (gone.length === 0) return [];
  return [
    {
      sheet: sheet.sheetName,
      weight: "look",
      words: `Cells that the formulas need were deleted: ${gone.slice(0, 8).join(", ")}${gone.length > 8 ? ` and ${String(gone.length - 8)} more` : ""}. Undo the deletion, or make the batch anew and copy your figures over.`,
    },
  ];
}
