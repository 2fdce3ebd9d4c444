import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import path from "node:path";
import { parse } from "csv-parse/sync";
import { registry } from "../../src/functions/registry";
import { bases, basisNames } from "./bases";
import { reasonsForNoDocument } from "./reasons";

export type RowCounts = Readonly<Record<string, Readonly<Record<string, number>>>>;

const folder = path.dirname(fileURLToPath(import.meta.url));

/** Every table of all topics: "wort/colour.csv". */
export function tables(): string[] {
  const topics = readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isDirectory());
  return topics.flatMap(({ name }) =>
    readdirSync(path.join(folder, name))
      .filter((file) => file.endsWith(".csv"))
      .map((file) => `${name}/${file}`),
  );
}

/** How many rows of each basis the tables of all topics hold, by function. */
export function rowsByFunction(): RowCounts {
  const counts: Record<string, Record<string, number>> = {};
  for (const table of tables()) {
    const rows = parse(readFileSync(path.join(folder, table), "utf8"), { columns: true, skip_empty_lines: true }) as {
      function: string;
      basis: string;
    }[];
    for (const row of rows) {
      const own = (counts[row.function] ??= {});
      own[row.basis] = (own[row.basis] ?? 0) + 1;
    }
  }
  return counts;
}

/** The table as Markdown: one line for each function, with the reason where nothing is independent. */
export function rowsTable(counts: RowCounts): string {
  const lines = registry.map(({ id }) => {
    const own = counts[id] ?? {};
    const reason = (own["document"] ?? 0) > 0 ? "" : (reasonsForNoDocument[id] ?? "NO REASON GIVEN");
    return `| ${id} | ${basisNames.map((basis) => own[basis] ?? 0).join(" | ")} | ${reason} |`;
  });
  const total = basisNames.map((basis) => Object.values(counts).reduce((sum, own) => sum + (own[basis] ?? 0), 0));
  return [
    `| function | independent: ${basisNames.join(" | ")} | if none is independent, why |`,
    `|${"---|".repeat(basisNames.length + 2)}`,
    ...lines,
    `| **all** | ${total.join(" | ")} | |`,
  ].join("\n");
}

/** tests/reference/README.md, which `npm run generate` writes. */
export function rowsReadme(): string {
  return `# Check values, function by function

How many rows of the tables in this folder stand behind each function, by what they rest on. Only the first column is
independent of the code, and only it decides whether a reason is asked for:

${basisNames.map((basis) => `- *${basis}*: ${bases[basis]}.`).join("\n")}

The README of each topic says where its tables come from. Written by \`npm run generate\`; the reasons stand in \`reasons.ts\`.

${rowsTable(rowsByFunction())}

## Numbers that are no function's

The sheets and the pane show numbers of these functions, sums and means of cells, and the following, which no table here covers.

| number | rests on | held by |
|---|---|---|
| a figure of the kit learned from its batches, and its ± | precision-weighted mean, a textbook's (from memory); the spreads assumed are our judgement | tests/core/kit, worked by hand |
| what boiled away, what bottling lost (kit sheet) | differences of volumes on the batch sheet | tests/sheets/kit.test.ts |
| corrections: water, extract, minutes, bitterness | WORT.THIN, REDUCE, ENRICH, MIX and HOPS.IBU; when a miss is worth correcting is common practice | tests/workbook/companion: sums worked by hand, NBS table values |
| dates to come | PACK.READY, LOG.FORECAST; else three and ten days (common practice) | tests/workbook/calendar.test.ts |
| the ± of a cell that the pane explains | GAUGE.SPREAD; what instruments are good for is common practice, from memory | tests/sheets/explain-cell.test.ts |
| a keg counts as ready after seven days | common practice, from memory | nothing outside the project |
| hop masses of a scaled batch | HOPS.SHARE, solved for the same bitterness | tests/workbook/scale |
| the pressure and sugar that the pane refuses or warns of | PACK.CHECK and PACK.PRESSURE | tests/workbook/companion: just below and just above the bottle's and the keg's limit |
| what a batch on the club sheet was and becomes | the functions behind the club's figures, or the member's own scores | tests/sheets/sharing.test.ts |
| how long a batch file's tables may be: 40 malts, 40 hops, 60 steps, 300 readings, 200 times | our judgement: far more than a brewing at home has, and no sheet of any length | tests/workbook/batch-file: malts and readings beyond it are refused |
| formulas that calculate on, and values, of an unplugged sheet | counted | tests/sheets/unplugging.test.ts, unplugged-hand-out.test.ts |
| what the batch sheet's words name: signs within 24 to 48 hours, done by day 8 to 12, 1 to 2 minutes in sanitiser, sanitised from flame-out on, room under a cap, an hour of bottling, what hydrometers are calibrated at | common practice, no source | tests/sheets/first-batch.test.ts: that the sheet says them, not that they are right |
| the original gravity that the sheet goes by when a reading cannot be | WORT.GRAVITY in the volume measured; of a mash, none and all of the grain's sugar are the ends | tests/sheets/batch-checks.test.ts, batch-bad-input.test.ts |
| where the sheet's checks begin (temperatures, sizes of bottles, per cent typed as shares) | common practice or our judgement, said at each | tests/sheets/batch-checks.test.ts: that they begin there |
| limits of the checks (reading noise, spikes, slack) | common practice or our judgement, said at each | tests of the checks, not of the limits |
`;
}
