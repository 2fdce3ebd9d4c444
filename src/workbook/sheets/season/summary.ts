import type { UnitSystem } from "../../../functions/quantities";
import { monthsShort } from "../../grid/words/day-words";
import type { SheetBuilder } from "../../grid/plan/sheet-builder";
import type { CellContent, NumberFormat } from "../../grid/plan/sheet-plan";
import { printedTo } from "./season-columns";

interface SummaryOptions {
  readonly units: UnitSystem;
  readonly today: CellContent;
  readonly allowance: CellContent;
}

/** A column of the list, as sums see it: "$P$25:$P$1024". */
type ListColumn = (letter: string) => string;

const volumeUnit = '=IF(season_units="us","US gal","L")';
const years = 5;
const monthLetters = ["G", "H", "I", "J", "K", "L", "M", "N", "O", "P", "Q", "R"];

/** 1. The year, against the allowance that the brewer has looked up, and the bests; 2. year by year and month by month. Returns the cell of the units. */
export function summary(b: SheetBuilder, options: SummaryOptions, list: ListColumn): string {
  section(b, "1  The year", "How much may be brewed at home in a year is for local law to say: look it up, and write it below");
  const top = b.row;
  theYear(b, options, list);
  bests(b, top, list);
  b.row = top + 10;
  b.gap();
  section(b, "2  Year by year, month by month", "What went into the fermenter; planned batches are left out");
  yearsAndMonths(b, list, top);
  b.gap();
  return `$C$${top + 1}`;
}

function section(b: SheetBuilder, title: string, hint: string): void {
  b.height(18);
  b.put("A", title, { style: "section", mergeTo: "D" });
  b.put("E", hint, { style: "sectionHint", mergeTo: printedTo });
  b.row += 1;
}

/** Sum over the batches that were brewed from one day up to another. */
const between = (list: ListColumn, from: string, to: string): string =>
  `${list("D")},">="&${from},${list("D")},"<"&${to},${list("E")},"<>planned"`;
const inYear = (list: ListColumn, year: string): string => between(list, `DATE(${year},1,1)`, `DATE(${year}+1,1,1)`);

function theYear(b: SheetBuilder, { units, today, allowance }: SummaryOptions, list: ListColumn): void {
  const line = (
    label: string,
    content: CellContent,
    options: { style: "input" | "result" | "keyResult"; format?: NumberFormat; name?: string; choices?: readonly string[] },
    unit?: CellContent,
  ) => {
    b.put("A", label, { style: "label", mergeTo: "B" });
    b.put("C", content, options);
    if (unit !== undefined) b.put("D", unit, { style: "unit", mergeTo: "E" });
    b.row += 1;
  };
  line("Today", today, { style: "result", format: "date", name: "season_today" });
  line("Units of this sheet", units, { style: "input", name: "season_units", choices: ["metric", "us"] }, "metric or us");
  line("Year looked at", "=YEAR(season_today)", { style: "input", format: "whole", name: "season_year" }, "type another to look back");
  line("Allowance for a year", allowance, { style: "input", format: "one", name: "season_allowance" }, volumeUnit);
  line(
    "Brewed in that year",
    `=SUMIFS(${list("P")},${inYear(list, "season_year")})`,
    { style: "keyResult", format: "one", name: "season_brewed" },
    volumeUnit,
  );
  line(
    "Left of the allowance",
    '=IF(N(season_allowance)=0,"",season_allowance-season_brewed)',
    { style: "keyResult", format: "one", name: "season_allowance_left" },
    `=IF(season_allowance_left="","no allowance written yet",IF(season_allowance_left<0,"above it by so much",${volumeUnit.slice(1)}))`,
  );
  line("Batches brewed in that year", `=COUNTIFS(${inYear(list, "season_year")})`, {
    style: "result",
    format: "whole",
    name: "season_batches",
  });
  line("Spent in that year", `=SUMIFS(${list("S")},${inYear(list, "season_year")})`, {
    style: "result",
    format: "money",
    name: "season_spent",
  });
  line(
    "Bottles standing ready",
    `=SUMIFS(${list("V")},${list("E")},"ready",${list("Q")},">0")+SUMIFS(${list("Q")},${list("E")},"ready",${list("V")},"")`,
    { style: "result", format: "whole", name: "season_ready" },
    "filled, or left as you typed",
  );
  line(
    "Ready in kegs",
    `=SUMIFS(${list("V")},${list("E")},"ready",${list("R")},">0",${list("Q")},"")+SUMIFS(${list("R")},${list("E")},"ready",${list("V")},"")`,
    { style: "result", format: "one", name: "season_ready_kegs" },
    volumeUnit,
  );
  b.highlight({ range: `C${b.row - 5}`, formula: "=N(season_allowance_left)<0", fill: "#7A1F1F", color: "#FFFFFF", bold: true });
}

/** Best of all batches that were brewed: the figure, and which batch it was. A plan has no figure in any of these columns. */
function bests(b: SheetBuilder, top: number, list: ListColumn): void {
  const lines: readonly (readonly [label: string, column: string, pick: "MAX" | "MIN", format: NumberFormat])[] = [
    ["Highest score", "U", "MAX", "one"],
    ["Strongest, % vol", "K", "MAX", "one"],
    ["Most bitter, IBU", "M", "MAX", "whole"],
    ["Darkest", "AC", "MAX", "one"],
    ["Palest", "AC", "MIN", "one"],
    [`="Cheapest beer, per "&${volumeUnit.slice(1)}`, "T", "MIN", "money"],
    ["Most bottles", "Q", "MAX", "whole"],
    [`="Most in kegs, "&${volumeUnit.slice(1)}`, "R", "MAX", "one"],
  ];
  b.put("G", "Bests of all batches", { style: "heading", mergeTo: "N" }, top);
  for (const [index, [label, column, pick, format]] of lines.entries()) {
    const row = top + 1 + index;
    b.put("G", label, { style: "label", mergeTo: "I" }, row);
    b.put("J", `=IF(COUNT(${list(column)})=0,"",${pick}(${list(column)}))`, { style: "keyResult", format }, row);
    b.put(
      "K",
      `=IF(J${row}="","",INDEX(${list("B")},MATCH(J${row},${list(column)},0)))`,
      { style: "resultText", format: "text", mergeTo: "N" },
      row,
    );
  }
}

function yearsAndMonths(b: SheetBuilder, list: ListColumn, chartFrom: number): void {
  const heading = b.row;
  for (const [letter, text] of [
    ["B", "Year"],
    ["C", volumeUnit],
    ["D", "Batches"],
    ["E", "Spent"],
    ["F", "Closed"],
  ] as const)
    b.put(letter, text, { style: "headingRight" }, heading);
  for (let index = 0; index < years; index += 1) {
    const row = heading + 1 + index;
    b.put("B", index === 0 ? "=season_year" : `=B${row - 1}-1`, { style: "result", format: "whole" }, row);
    b.put("C", `=SUMIFS(${list("P")},${inYear(list, `$B${row}`)})`, { style: "keyResult", format: "one" }, row);
    b.put("D", `=COUNTIFS(${inYear(list, `$B${row}`)})`, { style: "result", format: "whole" }, row);
    b.put("E", `=SUMIFS(${list("S")},${inYear(list, `$B${row}`)})`, { style: "result", format: "money" }, row);
    b.put(
      "F",
      `=IF(COUNTIFS(${list("AB")},$B${row})=0,"",IF(COUNTIFS(${list("AB")},$B${row})<D${row},"in part","yes"))`,
      { style: "resultText", format: "text" },
      row,
    );
  }
  for (const [index, letter] of monthLetters.entries()) {
    const [from, to] = [`DATE(season_year,${index + 1},1)`, `DATE(season_year,${index + 2},1)`];
    b.put(letter, monthsShort[index] ?? "", { style: "headingRight" }, heading);
    b.put(letter, `=SUMIFS(${list("P")},${between(list, from, to)})`, { style: "keyResult", format: "one" }, heading + 1);
    b.put(letter, `=COUNTIFS(${between(list, from, to)})`, { style: "result", format: "whole" }, heading + 2);
    b.put(letter, `=IFERROR(AVERAGEIFS(${list("U")},${between(list, from, to)}),"")`, { style: "result", format: "one" }, heading + 3);
  }
  b.put("S", volumeUnit, { style: "unit" }, heading + 1);
  b.put("S", "batches", { style: "unit" }, heading + 2);
  b.put("S", "mean score", { style: "unit", mergeTo: "T" }, heading + 3);
  b.chart({
    name: "Season",
    title: "Brewed, month by month",
    horizontal: { format: "text" },
    vertical: { format: "whole" },
    series: [
      { name: "Brewed", across: `G${heading}:R${heading}`, values: `G${heading + 1}:R${heading + 1}`, color: "#1F5150", look: "columns" },
    ],
    from: `O${chartFrom}`,
    to: `${printedTo}${chartFrom + 9}`,
  });
  b.row = heading + years + 1;
}
