import type { CellValue } from "./named-cells";

type Cells = readonly (readonly CellValue[])[];

/** What makes the same words another formula in each cell. */
const differsByPlace = /@|\[#This Row\]|\b(?:ROW|COLUMN|CELL|RAND\w*)\(/i;

/**
 * Excel may answer, in a cell that another cell's formula spills into, with that formula. Such cells hold values: a block of cells that
 * all answer with the very same words, and yet show different things, is one formula, in its first cell.
 */
export function withoutSpilledFormulas(formulas: Cells, values: Cells): Cells {
  const blocks = blocksAlike(formulas).filter((cells) => new Set(cells.map(([row, column]) => values[row]?.[column])).size > 1);
  if (blocks.length === 0) return formulas;
  const held = formulas.map((line) => [...line]);
  for (const [, ...spilled] of blocks) for (const [row, column] of spilled) held[row]![column] = values[row]?.[column] ?? "";
  return held;
}

type Place = readonly [row: number, column: number];

/** Cells beside or below each other with the same formula, the first of each block first. */
function blocksAlike(formulas: Cells): Place[][] {
  const blocks = new Map<string, Place[]>();
  const found: Place[][] = [];
  for (const [row, line] of formulas.entries()) {
    for (const [column, formula] of line.entries()) {
      if (typeof formula !== "string" || !formula.startsWith("=") || differsByPlace.test(formula)) continue;
      const near: Place[] = [
        [row, column - 1],
        [row - 1, column],
      ];
      const before = near.find(([r, c]) => formulas[r]?.[c] === formula);
      const block = (before && blocks.get(before.join())) ?? [];
      if (!before) found.push(block);
      block.push([row, column]);
      blocks.set([row, column].join(), block);
    }
  }
  return found.filter((cells) => cells.length > 1);
}
