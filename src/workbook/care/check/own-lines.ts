import type { NamedCells } from "../../grid/read/named-cells";
import { planVersion } from "../../batch/describe/plan-version";
import { batchMark, type BatchSheet } from "../../batch/read/batch-sheets";
import { allSaid, laidOver, printedLines, printedRows, type Said } from "../../batch/rules/what-it-says";
import { OnlyTheSheetKnows } from "../../grid/evaluate/evaluate";
import { address } from "../../grid/plan/addresses";
import type { Finding } from "./finding";

/** What the rules say of a sheet as it stands. Undefined on one of an older plan, whose lines are its own, and where only the spreadsheet can tell. */
export function saidOf(sheet: BatchSheet): readonly Said[] | undefined {
  if (sheet.has(batchMark) && Number(sheet.value(batchMark)) < planVersion) return undefined;
  try {
    return allSaid(laidOver(sheet));
  } catch (problem) {
    if (problem instanceof OnlyTheSheetKnows) return undefined;
    throw problem;
  }
}

/** What the sheet's own checks complain about, except by a rule of which `details` tell more. @param said by the rules; without it the lines are taken as they show */
export function ownLines(sheet: BatchSheet, said: readonly Said[] | undefined, details: readonly Finding[]): Finding[] {
  const { from } = sheet.area("check_states");
  if (!said)
    return printedRows(sheet).flatMap((row): Finding[] => {
      const [label, state, words] = [-1, 0, 1].map((column) => String(sheet.at(row, from.column + column)));
      return state === "stop" || state === "look"
        ? [{ sheet: sheet.sheetName, address: address(row, from.column), weight: state, words: `${label ?? ""}: ${words ?? ""}` }]
        : [];
    });
  const lines = printedLines(sheet);
  const told = new Set(details.map(({ rule }) => rule));
  return said
    .filter(({ rule }) => !told.has(rule))
    .map(({ line, rule, label, state, words, cells }): Finding => ({
      sheet: sheet.sheetName,
      // Without a typed cell of its own, the line itself.
      address: typedCell(sheet, cells) ?? address(lines.find((printed) => printed.line.id === line)?.row ?? from.row, from.column),
      weight: state,
      words: `${label}: ${words}`,
      rule,
    }));
}

/** Cells that tell which rules apply: nobody is sent there for what the rules say. */
const ofEveryRule: ReadonlySet<string> = new Set(["into", "units", "og_scale"]);

/** The first cell that a rule speaks of into which something is typed. */
function typedCell(sheet: NamedCells, names: readonly string[]): string | undefined {
  const name = names.find((one) => {
    if (ofEveryRule.has(one) || !sheet.has(one) || sheet.range(one).includes(":")) return false;
    return !String(sheet.formula(one)).startsWith("=");
  });
  return name === undefined ? undefined : sheet.range(name);
}
