import { ebcFromLovibond } from "../../../../core/wort/colour-scales";
import { middle, typicalFermentables, typicalOf, type TypicalFermentable } from "../../../../core/wort/typical-fermentables";
import type { Filled } from "../../../batch/contents";
import { methodOf } from "../../../batch/read/batch-contents";
import { unitsOf } from "../../../batch/read/batch-sheets";
import { unitWords } from "../../../batch/unit-words";
import type { NamedCells } from "../../../grid/read/named-cells";
import { changeCells, type CellChange } from "../change-cells";
import { ChangeRefused } from "../outcome";

/** Columns of the malt table, counted from the first one that has a name. */
const columns = { ingredient: -1, mass: 0, yieldPercent: 1, handling: 2, colour: 3 } as const;

/** What of the list a sheet can use: where nothing is mashed, grain must be one that steeps. */
export const offeredOn = (sheet: NamedCells): readonly TypicalFermentable[] =>
  typicalFermentables.filter(({ handling, steeps }) => methodOf(sheet) === "all-grain" || handling !== "mash" || steeps);

const inSheet = (sheet: NamedCells, lovibond: number): number =>
  unitsOf(sheet) === "us" || lovibond === 0 ? lovibond : Math.round(ebcFromLovibond(lovibond));

const span = (lowest: number, highest: number): string => (lowest === highest ? String(lowest) : `${lowest} to ${highest}`);

/** What is sold of a kind, in the units of the sheet. */
export function typicalWords(sheet: NamedCells, { yieldPercent, lovibond }: TypicalFermentable): string {
  const [lowest, highest] = lovibond.map((colour) => inSheet(sheet, colour)) as [number, number];
  return `yield ${span(...yieldPercent)} %, colour ${span(lowest, highest)} ${unitWords(unitsOf(sheet)).maltColour}`;
}

const noteOf = (sheet: NamedCells, typical: TypicalFermentable): string =>
  `Typical: ${typicalWords(sheet, typical)} (textbooks). The figures on the sack or the tin come first.`;

const figuresOf = (sheet: NamedCells, typical: TypicalFermentable): Record<"yieldPercent" | "colour" | "handling", number | string> => ({
  yieldPercent: middle(typical.yieldPercent),
  colour: inSheet(sheet, middle(typical.lovibond)),
  handling: methodOf(sheet) === "extract" && typical.handling === "mash" ? "steep" : typical.handling,
});

const labels = { yieldPercent: "the yield", colour: "the colour", handling: "the handling" } as const;

/** A line that is new, in the first free one of the table. @throws ChangeRefused where there is none */
export function addTypical(
  context: Excel.RequestContext,
  sheet: NamedCells,
  { typical, mass }: { readonly typical: TypicalFermentable; readonly mass: Filled<number> },
): Promise<void> {
  const row = linesOf(sheet).findIndex((cells) => cells.every((cell) => cell === ""));
  if (row < 0) throw new ChangeRefused("The malt table is full: put a row in above its last one.");
  const figures = figuresOf(sheet, typical);
  const change = (column: keyof typeof columns, label: string, content: number | string, note?: string): CellChange => ({
    name: "malt",
    row,
    column: columns[column],
    label,
    content,
    ...(note !== undefined && { note }),
  });
  return changeCells(context, sheet, [
    change("ingredient", "the ingredient", typical.name),
    ...(mass === "" ? [] : [change("mass", "the mass", mass)]),
    ...(["yieldPercent", "handling", "colour"] as const).map((key) =>
      change(key, labels[key], figures[key], key === "yieldPercent" ? noteOf(sheet, typical) : undefined),
    ),
  ]);
}

/** Lines whose name tells what they are, and that lack a figure. */
export interface Unfilled {
  readonly row: number;
  readonly ingredient: string;
  readonly typical: TypicalFermentable;
  readonly missing: readonly (keyof typeof labels)[];
}

export function unfilledLines(sheet: NamedCells): readonly Unfilled[] {
  return linesOf(sheet).flatMap((cells, row): Unfilled[] => {
    const [ingredient = "", , yieldPercent, handling, colour] = cells;
    const typical = typicalOf(String(ingredient));
    const missing = (["yieldPercent", "handling", "colour"] as const).filter((key) => ({ yieldPercent, handling, colour })[key] === "");
    return typical && missing.length > 0 ? [{ row, ingredient: String(ingredient), typical, missing }] : [];
  });
}

/** Fills in what those lines lack; what is typed stays. */
export const fillTypical = (context: Excel.RequestContext, sheet: NamedCells): Promise<void> =>
  changeCells(
    context,
    sheet,
    unfilledLines(sheet).flatMap(({ row, typical, missing }) =>
      missing.map((key, index): CellChange => ({
        name: "malt",
        row,
        column: columns[key],
        label: labels[key],
        content: figuresOf(sheet, typical)[key],
        ...(index === 0 && { note: noteOf(sheet, typical) }),
      })),
    ),
  );

/** Ingredient, mass, yield, handling, colour of each line. */
function linesOf(sheet: NamedCells): (number | string | boolean)[][] {
  const { from, to } = sheet.area("malt");
  return Array.from({ length: to.row - from.row + 1 }, (_, row) =>
    Object.values(columns).map((column) => sheet.at(from.row + row, from.column + column)),
  );
}
