import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { block } from "../../../src/workbook/grid/plan/addresses";
import { readScoreLines, scoreLineOpening } from "../../../src/workbook/sheets/club/score-line";
import { planScoreSheet } from "../../../src/workbook/sheets/club/score-sheet-plan";
import { planTasting } from "../../../src/workbook/sheets/club/tasting-plan";
import { columnLetters } from "../../../src/workbook/grid/plan/addresses";
import { paperGrid } from "../../support/paper-grid";

const beerNames = ["Footbridge", "Reed Bed", "Mill Pond", "1/2", "Quarry", "Towpath"];
const codes = [184, 271, 396, 527, 638, 719];

function tasting(beers: number, tasters: number) {
  const plan = planTasting({
    sheetName: "Tasting",
    id: "abc",
    paper: "a4",
    beers: Array.from({ length: beers }, (_, index) => ({ code: codes[index] ?? 0, beer: beerNames[index] ?? "", member: `M${index}` })),
    tasters: Array.from({ length: tasters }, (_, index) => `T${index}`),
  });
  const range = (name: string) => block(plan.names.find((one) => one.name === name)?.range ?? "");
  return { plan, scores: range("tasting_scores"), ranking: range("tasting_ranking") };
}

/** Places of one taster's scores: the mean of the places that equal scores take together. */
function places(row: readonly number[]): number[] {
  const sorted = [...row].sort((one, other) => other - one);
  return row.map((score) => (sorted.indexOf(score) + 1 + sorted.lastIndexOf(score) + 1) / 2);
}

const score = fc.oneof({ weight: 9, arbitrary: fc.integer({ min: 5, max: 25 }) }, { weight: 1, arbitrary: fc.constant("") });

describe("the ranking of a blind tasting", () => {
  it("lists each beer once, the smallest rank sum first, with the name that its code has in the key", () => {
    const tables = fc
      .tuple(fc.integer({ min: 2, max: 6 }), fc.integer({ min: 1, max: 7 }))
      .chain(([beers, tasters]) =>
        fc.array(fc.array(score, { minLength: beers, maxLength: beers }), { minLength: tasters, maxLength: tasters }),
      );
    let listed = 0;
    fc.assert(
      fc.property(tables, (rows) => {
        const beers = rows[0]?.length ?? 0;
        const { plan, scores, ranking } = tasting(beers, rows.length);
        const typed = new Map(
          rows.flatMap((row, taster) =>
            row.map((sum, beer) => [`${columnLetters(scores.from.column + beer)}${scores.from.row + taster}`, sum] as const),
          ),
        );
        const grid = paperGrid(plan, typed);
        const shown = Array.from({ length: beers }, (_, place) =>
          ["A", "B", "C", "F", "H"].map((column) => grid.at(`${column}${ranking.from.row + place}`)),
        );
        const complete = rows.filter((row): row is number[] => row.every((sum) => sum !== ""));
        if (complete.length === 0) {
          expect(shown.flat().every((cell) => cell === "")).toBe(true);
          return;
        }
        listed += 1;
        const sums = Array.from({ length: beers }, (_, beer) => complete.reduce((sum, row) => sum + (places(row)[beer] ?? 0), 0));
        const wanted = sums
          .map((sum, beer) => ({ sum, beer }))
          .sort((one, other) => one.sum - other.sum || one.beer - other.beer)
          .map(({ sum, beer }) => [1 + sums.filter((other) => other < sum).length, codes[beer], beerNames[beer], `M${beer}`, sum]);
        expect(shown).toEqual(wanted);
      }),
      { numRuns: 60 },
    );
    expect(listed).toBeGreaterThan(10);
  });

  it("says in words what the scores show: agreement, chance, or too few to tell", () => {
    const sentence = (rows: readonly (readonly number[])[]): string => {
      const { plan, scores } = tasting(3, rows.length);
      const grid = paperGrid(
        plan,
        new Map(
          rows.flatMap((row, taster) => row.map((sum, beer) => [`${columnLetters(2 + beer)}${scores.from.row + taster}`, sum] as const)),
        ),
      );
      return String(
        plan.cells.flatMap(({ address, style }) => (style === "message" && address.startsWith("A") ? [grid.at(address)] : [])).join(),
      );
    };
    // Three who agree in everything: 6 of 216 orders, 2.8 % (worked by hand); rank sums 3, 6, 9, least difference 1.96 √6 = 4.8.
    expect(
      sentence([
        [20, 15, 10],
        [22, 18, 9],
        [25, 24, 23],
      ]),
    ).toBe("The tasters agree more than chance would have it: beers whose rank sums are more than 4.8 apart differ.");
    // One of the three the other way round: rank sums 5, 6, 7, and 204 of 216 orders are as far apart or further (worked by hand below).
    expect(
      sentence([
        [20, 15, 10],
        [22, 18, 9],
        [20, 21, 25],
      ]),
    ).toContain("The order could be chance (94 % of drawn orders are as clear)");
    expect(
      sentence([
        [20, 15, 10],
        [22, 18, 9],
      ]),
    ).toContain("Even if so few tasters agreed in everything it could be chance");
    expect(sentence([])).toBe("No taster has scored every beer yet.");
  });
});

describe("a score sheet", () => {
  const sheet = planScoreSheet({
    sheetName: "Scores Ada",
    tastingName: "Tasting",
    tastingId: "k3j9x2m4q8z1",
    paper: "a4",
    taster: "Ada",
    codes: [527, 184],
  });
  const lineAt = sheet.names.find(({ name }) => name === "score_line")?.range ?? "";

  it("holds no word of ours that needs Gylebook, and no name of a beer", () => {
    for (const { content } of sheet.cells) expect(String(content)).not.toMatch(/GYLE\.|Footbridge/);
  });

  it("sends its marks back as a line that is read as what was typed, whatever stands around it", () => {
    const marks = new Map<string, number>(["B", "C", "D", "E", "F"].map((column, index) => [`${column}7`, index + 1]));
    const line = String(paperGrid(sheet, marks).at(lineAt));
    expect(line).toBe(`${scoreLineOpening}|k3j9x2m4q8z1|Ada|527:15|184:`);
    const { scores, unreadable } = readScoreLines(`Hello,\r\n\r\n> ${line}  \r\nsee you\n${scoreLineOpening}|torn`);
    expect(scores).toEqual([
      {
        from: "the line of Ada",
        tastingId: "k3j9x2m4q8z1",
        taster: "Ada",
        sums: [
          { code: 527, sum: 15 },
          { code: 184, sum: "" },
        ],
      },
    ]);
    expect(unreadable).toEqual([`${scoreLineOpening}|torn`]);
  });
});
