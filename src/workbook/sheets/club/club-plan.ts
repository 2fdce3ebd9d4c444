import { ebcFromSrm } from "../../../core/wort/colour-scales";
import type { UnitSystem } from "../../../functions/quantities";
import { cellText } from "../../grid/words/cell-text";
import { unitWords } from "../../batch/unit-words";
import { columnLetters } from "../../grid/plan/addresses";
import { colourBands } from "../../grid/plan/colour-bands";
import { SheetBuilder } from "../../grid/plan/sheet-builder";
import type { CellContent, NumberFormat, SheetPlan, StyleName } from "../../grid/plan/sheet-plan";
import { clubFacts, factNames, type ClubEntry, type FactName } from "./club-facts";

/** Marks the sheet, and tells which plan it follows. */
export const clubMark = "gylebook_club";
export const clubVersion = 1;
/** Batches that stand side by side on one sheet, so that it prints on one page. */
export const mostBatches = 10;
export const factsName = "club_facts";

/** B to K are the batches, L and M mean and spread over them; from column O on stand the facts, a row a batch. */
const firstBatchColumn = 2;
const batchColumns = Array.from({ length: mostBatches }, (_, index) => columnLetters(firstBatchColumn + index));
const [firstLetter, lastLetter] = ["B", "K"];
const firstFactColumn = 15;
const firstFactRow = 4;

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
export function planClub(options: {
  readonly sheetName: string;
  readonly units: UnitSystem;
  readonly entries: readonly ClubEntry[];
}): SheetPlan {
  const { sheetName, units, entries } = options;
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
  facts(b, units, entries);
  b.row = 4;
  const rows = new Map<string, number>();
  for (const { title, hint, lines } of sections(units)) {
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
      rows.set(line.label, b.row);
      putLine(b, line, rows);
      b.row += 1;
    }
    b.gap();
  }
  const lastRow = b.row - 1;
  b.put(
    "A",
    "Spread is the standard deviation: about two thirds of the figures lie within mean ± spread. With two or three tasters it says little.",
    { style: "hint", mergeTo: "M" },
  );
  const colour = rows.get("Colour, planned") ?? 1;
  colourBands(
    b,
    `${firstLetter}${rows.get("About this colour")}:${lastLetter}${rows.get("About this colour")}`,
    `${firstLetter}$${colour}`,
    units === "us" ? 1 : ebcFromSrm(1),
  );
  const widths = [26, ...batchColumns.map(() => 13), 9, 9, 3, 16, 22, 18, 11, 8, 8, 8, 8, 8, 8, 8, 8, 8, 7, 7, 7, 7, 7, 30, 16];
  const paper = units === "us" ? "letter" : "a4";
  return b.build(
    sheetName,
    widths,
    { area: `A1:M${lastRow + 1}`, paper, landscape: true, onePage: true, breaksBeforeRow: [], footer: `${sheetName} · page &P of &N` },
    2,
  );
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
  rows: ReadonlyMap<string, number>,
): void {
  const row = b.row;
  b.put("A", label, { style: "label" });
  if (style === "message") b.height(26);
  const across = (line: string): string => `${firstLetter}${rows.get(line)}:${lastLetter}${rows.get(line)}`;
  for (const [index, letter] of batchColumns.entries()) {
    const source = fact && `${columnLetters(firstFactColumn + factNames.indexOf(fact))}${firstFactRow + index}`;
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
  const all = `${firstLetter}${row}:${lastLetter}${row}`;
  const digits: NumberFormat = format === "whole" ? "one" : format;
  b.put("L", `=IF(COUNT(${all})=0,"",AVERAGE(${all}))`, { style: "result", format: digits });
  b.put("M", `=IF(COUNT(${all})<2,"",STDEV(${all}))`, { style: "result", format: digits });
}

/** What stands above each fact, right of the printed page. */
export const factHeadings: Readonly<Record<FactName, string>> = {
  member: "Member",
  beer: "Beer",
  style: "Style",
  brewedOn: "Brewed on",
  volume: "Volume",
  ogPlan: "OG plan",
  ogReached: "OG",
  fgPlan: "FG plan",
  fgReached: "FG",
  ibuPlan: "IBU plan",
  ibuReached: "IBU",
  colourPlan: "Colour plan",
  colourReached: "Colour",
  looks: "Looks",
  smells: "Smells",
  tastes: "Tastes",
  feels: "Feels",
  again: "Again",
  notes: "Notes",
  mark: "Mark",
};
export const factFormats: Partial<Record<FactName, NumberFormat>> = {
  brewedOn: "date",
  volume: "two",
  ogPlan: "gravity",
  ogReached: "gravity",
  fgPlan: "gravity",
  fgReached: "gravity",
  ibuPlan: "one",
  ibuReached: "one",
  colourPlan: "one",
  colourReached: "one",
};

/** To the right of the printed page: what came from the files, one row a batch, for reading and correcting. */
function facts(b: SheetBuilder, units: UnitSystem, entries: readonly ClubEntry[]): void {
  b.put("O", "From the members' files, a row a batch. Units:", { style: "hint" }, 1);
  b.put("Q", units, { style: "hint", name: "club_units" }, 1);
  b.put("R", "Plan of this sheet:", { style: "hint" }, 1);
  b.put("T", clubVersion, { style: "hint", name: clubMark }, 1);
  const words = (content: CellContent): CellContent => (typeof content === "string" ? cellText(content) : content);
  const made = entries.map((entry) => clubFacts(entry, units));
  for (const [index, fact] of factNames.entries()) {
    const letter = columnLetters(firstFactColumn + index);
    const format = factFormats[fact];
    b.put(letter, factHeadings[fact], { style: format ? "headingRight" : "heading" }, firstFactRow - 1);
    for (let row = 0; row < mostBatches; row += 1) {
      b.put(
        letter,
        words(made[row]?.[fact] ?? ""),
        { style: format ? "input" : "inputText", ...(format && { format }) },
        firstFactRow + row,
      );
    }
  }
  b.name(
    factsName,
    `${columnLetters(firstFactColumn)}${firstFactRow}:${columnLetters(firstFactColumn + factNames.length - 1)}${firstFactRow + mostBatches - 1}`,
  );
}
