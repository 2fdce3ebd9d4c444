import { columnLetters } from "../../grid/plan/addresses";
import { SheetBuilder } from "../../grid/plan/sheet-builder";
import type { NumberFormat, SheetPlan, StyleName } from "../../grid/plan/sheet-plan";
import { factNames, type FactName } from "./club-facts";
import { classMark, firstFactRow, putFacts, roomOf, type FactsOnSheet } from "./facts-plan";

/** A to N are printed; from column P on stand the facts, a row a learner. */
const firstFactColumn = 16;
const firstRow = 6;

/** What is predicted and measured, three columns each: from the facts, or by one lifted call over columns named before. */
interface Measure {
  readonly title: string;
  readonly format: NumberFormat;
  readonly facts?: readonly [predicted: FactName, measured: FactName];
  readonly lifted?: (original: string, final: string) => string;
}

const measures: readonly Measure[] = [
  { title: "Original gravity", format: "gravity", facts: ["ogPlan", "ogReached"] },
  { title: "Final gravity", format: "gravity", facts: ["fgPlan", "fgReached"] },
  { title: "Alcohol, %", format: "one", lifted: (original, final) => `GYLE.BEER.ABV(${original},${final})` },
  { title: "Attenuation, %", format: "whole", lifted: (original, final) => `GYLE.YEAST.ATTENUATION(${original},${final})` },
];

/** What every learner's plan predicts beside what each of them measured. Facts are values, everything else native formulas and lifted calls. */
export function planClass(facts: FactsOnSheet): SheetPlan {
  const { sheetName, units, rows } = facts;
  const b = new SheetBuilder();
  b.height(28);
  b.put("A", "Predicted and measured", { style: "title", mergeTo: "F" });
  b.put("L", "Gylebook class sheet", { style: "hint" });
  b.put("N", 1, { style: "hint", name: classMark });
  b.row = 2;
  b.put("A", "Predicted: by the learner's own plan. Measured: by the learner's own readings. Add more in the pane: Share, Club.", {
    style: "hint",
    mergeTo: "N",
  });
  putFacts(b, facts, firstFactColumn);
  const room = roomOf(rows.length);
  const lastRow = firstRow + room - 1;
  const down = (letter: string): string => `${letter}${firstRow}:${letter}${lastRow}`;
  const factAt = (fact: FactName, index: number): string =>
    `$${columnLetters(firstFactColumn + factNames.indexOf(fact))}${firstFactRow + index}`;
  const shown = (fact: FactName, index: number): string => `=IF(${factAt(fact, index)}="","",${factAt(fact, index)})`;

  b.put("A", "Learner", { style: "heading" }, firstRow - 1);
  b.put("B", "Beer", { style: "heading" }, firstRow - 1);
  for (let index = 0; index < room; index += 1) {
    b.put("A", shown("member", index), { style: "keyText", format: "text" }, firstRow + index);
    b.put("B", shown("beer", index), { style: "resultText", format: "text" }, firstRow + index);
  }
  const columns = measures.map((_, at) => [0, 1, 2].map((side) => columnLetters(3 + 3 * at + side)) as [string, string, string]);
  const [original, final] = columns;
  if (!original || !final) throw new Error("the gravities come first");
  for (const [at, { title, format, facts: from, lifted }] of measures.entries()) {
    const letters = columns[at] ?? original;
    b.put(letters[0], title, { style: "section", mergeTo: letters[2] }, firstRow - 2);
    for (const [side, heading] of ["Predicted", "Measured", "Difference"].entries())
      b.put(letters[side] ?? "", heading, { style: "headingRight" }, firstRow - 1);
    for (let index = 0; index < room; index += 1) {
      const row = firstRow + index;
      for (const side of [0, 1] as const) {
        const style: StyleName = side === 1 ? "keyResult" : "result";
        const call = lifted && index === 0 ? `=${lifted(down(original[side]), down(final[side]))}` : "";
        b.put(
          letters[side],
          from ? shown(from[side], index) : call,
          { style, format, ...(call !== "" && { spillsTo: `${letters[side]}${lastRow}` }) },
          row,
        );
      }
      const [predicted, measured] = [`${letters[0]}${row}`, `${letters[1]}${row}`];
      b.put(letters[2], `=IF(COUNT(${predicted},${measured})=2,${measured}-${predicted},"")`, { style: "result", format }, row);
    }
  }
  for (const [place, [label, fewest, word]] of (
    [
      ["Mean", 1, "AVERAGE"],
      ["Spread ±", 2, "STDEV"],
    ] as const
  ).entries()) {
    const row = lastRow + 2 + place;
    b.put("A", label, { style: "label" }, row);
    for (const [at, letters] of columns.entries())
      for (const letter of letters) {
        const format = measures[at]?.format ?? "one";
        b.put(
          letter,
          `=IF(COUNT(${down(letter)})<${fewest},"",${word}(${down(letter)}))`,
          { style: "result", format: format === "whole" ? "one" : format },
          row,
        );
      }
  }
  b.height(5, lastRow + 1);
  b.row = lastRow + 4;
  b.put(
    "A",
    "A difference that all share comes from the plan (efficiency, attenuation of the yeast) or from one instrument; one that a single learner has comes from that brew: volume, temperature of the sample, how well it was mixed.",
    { style: "hintWords", mergeTo: "N" },
  );
  b.height(30);
  const widths = [18, 25, ...columns.flatMap(() => [11, 11, 12]), 3, 16, 22, 18, 11, 8, 8, 8, 8, 8, 8, 8, 8, 8, 7, 7, 7, 7, 7, 30, 16];
  return b.build(
    sheetName,
    widths,
    {
      area: `A1:N${lastRow + 4}`,
      paper: units === "us" ? "letter" : "a4",
      landscape: true,
      // More learners than that would stand below 8 points on one page.
      ...(room <= 30 && { onePage: true as const }),
      breaksBeforeRow: [],
      footer: `${sheetName} · page &P of &N`,
    },
    firstRow - 1,
  );
}
