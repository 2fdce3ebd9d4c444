import { columnLetters } from "../../grid/plan/addresses";
import type { NamedCells } from "../../grid/read/named-cells";
import type { Finding } from "./finding";

/** What the sheet's own checks complain about, except what `said` has said with more detail. */
export function ownStates(sheet: NamedCells, said: readonly Finding[]): Finding[] {
  const covered = new Set(said.map(({ insteadOf }) => insteadOf));
  const { from } = sheet.area("check_states");
  return sheet.block("check_states").flatMap(([state], index): Finding[] => {
    const row = from.row + index;
    const label = String(sheet.at(row, from.column - 1));
    if ((state !== "stop" && state !== "look") || covered.has(label)) return [];
    return [
      {
        sheet: sheet.sheetName,
        address: `${columnLetters(from.column)}${row}`,
        weight: state,
        words: `${label}: ${String(sheet.at(row, from.column + 1))}`,
      },
    ];
  });
}
