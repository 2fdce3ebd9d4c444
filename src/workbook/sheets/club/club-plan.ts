import { ebcFromSrm } from "../../../core/wort/colour-scales";
import type { UnitSystem } from "../../../functions/quantities";
import { unitWords } from "../../batch/unit-words";
import { columnLetters } from "../../grid/plan/addresses";
import { colourBands } from "../../grid/plan/colour-bands";
import { linesPoints, SheetBuilder } from "../../grid/plan/sheet-builder";
import type { CellContent, NumberFormat, SheetPlan, StyleName } from "../../grid/plan/sheet-plan";
import { factNames, type FactName } from "./club-facts";
import { firstFactRow, putFacts, roomOf, type FactsOnSheet } from "./facts-plan";

/** Batches that stand side by side on a page; the next ten stand on a page of their own below. */
const onOnePage = 10;
/** B to K are the batches, L and M mean and spread over all of them; from column O on stand the facts, a row a batch. */
const firstBatchColumn = 2;
const batchColumns = Array.from({ length: onOnePage }, (_, index) => columnLetters(firstBatchColumn + index));
const [firstLetter, lastLetter] = ["B", "K"];
const firstFactColumn = 15;
const firstLine = 4;

interface Line {
  readonly label: string;
  readonly format: NumberFormat;
  readonly style?: StyleName;
  /** Repeats a fact of each batch… */
  readonly fact?: FactName;
  /** …or one lifted call for all of them, over rows named before. */
  readonly lifted?: (row: (line: string) => string) => string;
  /** …or a native formula for each, over the lines of its own column. */
  readonly each?: (cell: (line: string) => string) => string;
  readonly statistics?: boolean;
}

/** Several members' batches side by side. Facts are values, everything else native formulas and one lifted call a row. */
export function planClub(facts: FactsOnSheet): SheetPlan {
  const { sheetName, units, rows } = facts;
  const b = new SheetBuilder();
  b.height(28);
  b.put("A", "The club's table", { style: "title", mergeTo: "F" });
  b.put("L", "Gylebook club sheet", { style: "hint" });
  b.row = 2;
  b.put(
    "A",
    "Side by side, from the members' batch files. Planned and reached are computed anew from what each member typed. Add more in the pane: Share, Club.",
    { style: "hint", mergeTo: "M" },
  );
  putFacts(b, facts, firstFactColumn);
  const pages = roomOf(rows.length) / onOnePage;
  const all = sections(units);
  // Each page is as long as the first: its lines, the hint below them, and a heading above the next.
  const pageRows = all.reduce((sum, { lines }) => sum + lines.length + 2, 2);
  for (let page = 0; page < pages; page += 1) {
    b.row = firstLine + page * pageRows;
    if (page > 0) b.put("A", `Batches ${page * onOnePage + 1} to ${(page + 1) * onOnePage}`, { style: "keyText" }, b.row - 1);
    const places: Places = { rows: new Map(), page, pages, pageRows };
    for (const { title, hint, lines } of all) {
      b.height(18);
      b.put("A", title, { style: "section" });
      b.put("B", hint, { style: "sectionHint", mergeTo: "K" });
      for (const [letter, heading] of [
        ["L", "Mean"],
        ["M", "Spread ±"],
      ] as const)
        b.put(letter, lines.some(({ statistics }) => statistics) ? heading : "", { style: "section" });
      b.row += 1;
      for (const line of lines) {
        places.rows.set(line.label, b.row);
        putLine(b, line, places);
        b.row += 1;
      }
      b.gap();
    }
    const [colour, swatch] = ["Colour, planned", "About this colour"].map((line) => places.rows.get(line) ?? 1);
    colourBands(b, `${firstLetter}${swatch}:${lastLetter}${swatch}`, `${firstLetter}$${colour}`, units === "us" ? 1 : ebcFromSrm(1));
    if (page === 0)
      b.put(
        "A",
        "Spread is the standard deviation: about two thirds of the figures lie within mean ± spread. With two or three tasters it says little.",
        { style: "hint", mergeTo: "M" },
        b.row,
      );
  }
  const lastRow = firstLine + pages * pageRows - 3;
  const widths = [26, ...batchColumns.map(() => 13), 9, 9, 3, 16, 22, 18, 11, 8, 8, 8, 8, 8, 8, 8, 8, 8, 7, 7, 7, 7, 7, 30, 16];
  const paper = units === "us" ? "letter" : "a4";
  return b.build(
    sheetName,
    widths,
    {
      area: `A1:M${pages === 1 ? lastRow + 1 : lastRow}`,
      paper,
      landscape: true,
      ...(pages === 1 && { onePage: true as const }),
      breaksBeforeRow: Array.from({ length: pages - 1 }, (_, page) => firstLine + (page + 1) * pageRows - 1),
      footer: `${sheetName} · page &P of &N`,
    },
    2,
  );
}

/** Where the lines of a page stand, and how many pages of the same kind there are. */
interface Places {
  readonly rows: Map<string, number>;
  readonly page: number;
  readonly pages: number;
  readonly pageRows: number;
}

function sections(units: UnitSystem): readonly { title: string; hint: string; lines: readonly Line[] }[] {
  const words = unitWords(units);
  const srm = (range: string): string => (units === "us" ? range : `GYLE.BEER.SRM(${range})`);
  const scores = (cell: (line: string) => string): string => `${cell("Looks")}:${cell("Would brew it again")}`;
  const score = (label: string, fact: FactName): Line => ({ label, fact, format: "whole", statistics: true });
  return [
    {
      title: "1  Who and what",
      hint: "The member's name as it was typed in the pane",
      lines: [
        { label: "Member", fact: "member", format: "text", style: "keyText" },
        { label: "Beer", fact: "beer", format: "text", style: "message" },
        { label: "Style aimed at", fact: "style", format: "text", style: "message" },
        { label: "Brewed on", fact: "brewedOn", format: "date" },
        { label: `Into the fermenter, ${words.volume}`, fact: "volume", format: "one" },
      ],
    },
    {
      title: "2  Planned and reached",
      hint: "Reached: by the member's own readings",
      lines: [
        { label: "Original gravity, planned", fact: "ogPlan", format: "gravity", statistics: true },
        { label: "Original gravity, reached", fact: "ogReached", format: "gravity", style: "keyResult", statistics: true },
        { label: "Final gravity, planned", fact: "fgPlan", format: "gravity", statistics: true },
        { label: "Final gravity, reached", fact: "fgReached", format: "gravity", style: "keyResult", statistics: true },
        {
          label: "Attenuation, %",
          lifted: (row) => `GYLE.YEAST.ATTENUATION(${row("Original gravity, reached")},${row("Final gravity, reached")})`,
          format: "whole",
          statistics: true,
        },
        {
          label: "Alcohol, planned, %",
          lifted: (row) => `GYLE.BEER.ABV(${row("Original gravity, planned")},${row("Final gravity, planned")})`,
          format: "one",
          statistics: true,
        },
        {
          label: "Alcohol, reached, %",
          lifted: (row) => `GYLE.BEER.ABV(${row("Original gravity, reached")},${row("Final gravity, reached")})`,
          format: "one",
          style: "keyResult",
          statistics: true,
        },
        { label: "Bitterness, planned, IBU", fact: "ibuPlan", format: "whole", statistics: true },
        { label: "Bitterness, reached, IBU", fact: "ibuReached", format: "whole", style: "keyResult", statistics: true },
        { label: "Colour, planned", fact: "colourPlan", format: "one", statistics: true },
        { label: "Colour, reached", fact: "colourReached", format: "one", style: "keyResult", statistics: true },
        {
          label: "About this colour",
          lifted: (row) => `GYLE.BEER.HEX(${srm(row("Colour, planned"))})`,
          format: "general",
          style: "swatch",
        },
      ],
    },
    {
      title: "3  Tasted",
      hint: "Five for a beer you would pour for anybody, one for the drain",
      lines: [
        score("Looks", "looks"),
        score("Smells", "smells"),
        score("Tastes", "tastes"),
        score("Feels", "feels"),
        score("Would brew it again", "again"),
        {
          label: "Mean of the scores",
          each: (cell) => `IF(COUNT(${scores(cell)})=0,"",AVERAGE(${scores(cell)}))`,
          format: "one",
          style: "keyResult",
          statistics: true,
        },
        { label: "Spread of the scores ±", each: (cell) => `IF(COUNT(${scores(cell)})<2,"",STDEV(${scores(cell)}))`, format: "one" },
      ],
    },
  ];
}

function putLine(
  b: SheetBuilder,
  { label, format, style = "result", fact, lifted, each, statistics }: Line,
  { rows, page, pages, pageRows }: Places,
): void {
  const row = b.row;
  b.put("A", label, { style: "label" });
  // The name of a beer in a column of 13 characters, and that of a style.
  if (style === "message") b.height(linesPoints(fact === "beer" ? 3 : 2));
  const across = (line: string): string => `${firstLetter}${rows.get(line)}:${lastLetter}${rows.get(line)}`;
  for (const [index, letter] of batchColumns.entries()) {
    const source = fact && `${columnLetters(firstFactColumn + factNames.indexOf(fact))}${firstFactRow + page * onOnePage + index}`;
    const own = each?.((line) => `${letter}${rows.get(line)}`);
    const content: CellContent = source
      ? `=IF($${source}="","",$${source})`
      : own
        ? `=${own}`
        : index === 0 && lifted
          ? `=${lifted(across)}`
          : "";
    b.put(letter, content, { style, format, ...(lifted && index === 0 && { spillsTo: `${lastLetter}${row}` }) });
  }
  if (!statistics) return;
  // Over the batches of all pages, on each of them.
  const all = Array.from({ length: pages }, (_, other) => row + (other - page) * pageRows)
    .map((line) => `${firstLetter}${line}:${lastLetter}${line}`)
    .join(",");
  const digits: NumberFormat = format === "whole" ? "one" : format;
  b.put("L", `=IF(COUNT(${all})=0,"",AVERAGE(${all}))`, { style: "result", format: digits });
  b.put("M", `=IF(COUNT(${all})<2,"",STDEV(${all}))`, { style: "result", format: digits });
}
