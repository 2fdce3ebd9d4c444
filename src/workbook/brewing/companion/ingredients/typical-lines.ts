import { ebcFromLovibond } from "../../../../core/wort/colour-scales";
import { middle, typicalFermentables, typicalOf, type TypicalFermentable } from "../../../../core/wort/typical-fermentables";
import { lineCells, tableOffsets } from "../../../batch/derived/table-places";
import { called } from "../../../batch/describe/field";
import { batchFields } from "../../../batch/fields";
import type { Filled } from "../../../batch/contents";
import { methodOf } from "../../../batch/read/batch-contents";
import { unitsOf, type BatchSheet } from "../../../batch/read/batch-sheets";
import { unitWords } from "../../../batch/unit-words";
import { changeCells, type CellChange } from "../change-cells";
import { ChangeRefused } from "../outcome";

const { malt } = batchFields;
const columns = tableOffsets(malt);
/** What is typical of a kind. */
const figures = ["yieldPercent", "handling", "colour"] as const;
type Figure = (typeof figures)[number];

/** What of the list a sheet can use: where nothing is mashed, grain must be one that steeps. */
export const offeredOn = (sheet: BatchSheet): readonly TypicalFermentable[] =>
  typicalFermentables.filter(({ handling, steeps }) => methodOf(sheet) === "all-grain" || handling !== "mash" || steeps);

const inSheet = (sheet: BatchSheet, lovibond: number): number =>
  unitsOf(sheet) === "us" || lovibond === 0 ? lovibond : Math.round(ebcFromLovibond(lovibond));

const span = (lowest: number, highest: number): string => (lowest === highest ? String(lowest) : `${lowest} to ${highest}`);

/** What is sold of a kind, in the units of the sheet. */
export function typicalWords(sheet: BatchSheet, { yieldPercent, lovibond }: TypicalFermentable): string {
  const [lowest, highest] = lovibond.map((colour) => inSheet(sheet, colour)) as [number, number];
  return `yield ${span(...yieldPercent)} %, colour ${span(lowest, highest)} ${unitWords(unitsOf(sheet)).maltColour}`;
}

const noteOf = (sheet: BatchSheet, typical: TypicalFermentable): string =>
  `Typical: ${typicalWords(sheet, typical)} (textbooks). The figures on the sack or the tin come first.`;

const figuresOf = (sheet: BatchSheet, typical: TypicalFermentable): Record<Figure, number | string> => ({
  yieldPercent: middle(typical.yieldPercent),
  colour: inSheet(sheet, middle(typical.lovibond)),
  handling: methodOf(sheet) === "extract" && typical.handling === "mash" ? "steep" : typical.handling,
});

/** Cells of a line; the first figure says where it comes from. */
const cellsOf = (row: number, line: Parameters<typeof lineCells<typeof malt>>[2], note: string): CellChange[] => {
  const first = figures.find((key) => line[key] !== undefined);
  return lineCells(malt, row, line).map(({ key, ...cell }) => ({
    ...cell,
    label: `the ${called(malt.columns[key])}`,
    ...(key === first && { note }),
  }));
};

/** A line that is new, in the first free one of the table. @throws ChangeRefused where there is none */
export function addTypical(
  context: Excel.RequestContext,
  sheet: BatchSheet,
  { typical, mass }: { readonly typical: TypicalFermentable; readonly mass: Filled<number> },
): Promise<void> {
  const row = linesOf(sheet).findIndex((cells) => Object.values(cells).every((cell) => cell === ""));
  if (row < 0) throw new ChangeRefused("The malt table is full: put a row in above its last one.");
  const line = { ingredient: typical.name, ...(mass !== "" && { mass }), ...figuresOf(sheet, typical) };
  return changeCells(context, sheet, cellsOf(row, line, noteOf(sheet, typical)));
}

/** Lines whose name tells what they are, and that lack a figure. */
export interface Unfilled {
  readonly row: number;
  readonly ingredient: string;
  readonly typical: TypicalFermentable;
  readonly missing: readonly Figure[];
}

export function unfilledLines(sheet: BatchSheet): readonly Unfilled[] {
  return linesOf(sheet).flatMap((cells, row): Unfilled[] => {
    const ingredient = String(cells.ingredient);
    const typical = typicalOf(ingredient);
    const missing = figures.filter((key) => cells[key] === "");
    return typical && missing.length > 0 ? [{ row, ingredient, typical, missing }] : [];
  });
}

/** Fills in what those lines lack; what is typed stays. */
export const fillTypical = (context: Excel.RequestContext, sheet: BatchSheet): Promise<void> =>
  changeCells(
    context,
    sheet,
    unfilledLines(sheet).flatMap(({ row, typical, missing }) => {
      const typed = figuresOf(sheet, typical);
      return cellsOf(row, Object.fromEntries(missing.map((key) => [key, typed[key]])), noteOf(sheet, typical));
    }),
  );

/** What the table holds, without what is paid for and what stands beside it. */
function linesOf(sheet: BatchSheet) {
  const { from, to } = sheet.area("malt");
  const cell = (row: number, key: keyof typeof columns) => sheet.at(row, from.column + columns[key]);
  return Array.from({ length: to.row - from.row + 1 }, (_, index) => from.row + index).map((row) => ({
    ingredient: cell(row, "ingredient"),
    mass: cell(row, "mass"),
    yieldPercent: cell(row, "yieldPercent"),
    handling: cell(row, "handling"),
    colour: cell(row, "colour"),
  }));
}
