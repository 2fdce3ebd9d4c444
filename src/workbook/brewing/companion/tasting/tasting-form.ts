import type { BatchCell } from "../../../batch/fields/cells";
import type { BatchSheet } from "../../../batch/read/batch-sheets";
import { onSheet } from "../../../batch/derived/form-fields";
import type { Filled } from "../../../batch/contents";
import { tastedLines, tastingFields } from "../../../batch/fields/tasting";
import { madeFor } from "../../../batch/read/batch-contents";
import type { CellValue } from "../../../grid/read/named-cells";
import { notesWith } from "../append-note";
import { changeCells, type CellChange } from "../change-cells";
import { ChangeRefused } from "../outcome";

export interface TastingInput {
  /** Day number. */
  readonly tastedOn: Filled<number>;
  /** One for each of `tastedLines`. */
  readonly lines: readonly { readonly score: Filled<number>; readonly words: string }[];
  /** Goes below the notes that are there. */
  readonly note: string;
}

/** The form as the sheet stands. */
export function tastingIn(sheet: BatchSheet): TastingInput {
  return {
    tastedOn: sheet.number("tasted_on"),
    lines: tastedLines.map(({ fields: { score, words } }) => {
      const [beside, said] = [cellWithin(sheet, score.within), cellWithin(sheet, words.within)];
      return { score: typeof beside === "number" ? beside : "", words: String(said) };
    }),
    note: "",
  };
}

/** A cell counted from the first one of a name, which need not cover it. */
function cellWithin(sheet: BatchSheet, [name, row, column]: readonly [BatchCell, number, number]): CellValue {
  const { from } = sheet.area(name);
  return sheet.at(from.row + row, from.column + column);
}

/** Writes what differs from the sheet; an emptied field leaves its cell alone. */
export async function writeTasting(context: Excel.RequestContext, seen: BatchSheet, input: TastingInput): Promise<void> {
  const before = tastingIn(seen);
  const changes = input.lines.flatMap((line, index): CellChange[] => {
    const { label, fields } = tastedLines[index]!;
    return (["score", "words"] as const).flatMap((key): CellChange[] => {
      const [content, [name, row, column]] = [typeof line[key] === "string" ? line[key].trim() : line[key], fields[key].within];
      return content === "" || line[key] === before.lines[index]?.[key]
        ? []
        : [{ name, row, column, label: `what stands beside “${label}”`, content }];
    });
  });
  const { tastedOn } = tastingFields;
  if (input.tastedOn !== "" && input.tastedOn !== before.tastedOn)
    changes.push({ name: tastedOn.cell, label: onSheet(tastedOn, madeFor(seen)), content: input.tastedOn });
  if (input.note.trim() !== "") changes.push(notesWith(seen, input.note.trim()));
  if (changes.length === 0) throw new ChangeRefused("The sheet says so already.");
  await changeCells(context, seen, changes);
}
