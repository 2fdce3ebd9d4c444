import type { Filled } from "../../../batch/contents";
import type { NamedCells } from "../../../grid/read/named-cells";
import { notesWith } from "../append-note";
import { changeCells, type CellChange } from "../change-cells";
import { ChangeRefused } from "../outcome";

/** What is judged, in the order of the sheet. */
export const tasted = ["Looks", "Smells", "Tastes", "Feels", "Would brew it again"] as const;

export interface TastingInput {
  /** Day number. */
  readonly tastedOn: Filled<number>;
  /** One for each of `tasted`. */
  readonly lines: readonly { readonly score: Filled<number>; readonly words: string }[];
  /** Goes below the notes that are there. */
  readonly note: string;
}

/** The form as the sheet stands. */
export function tastingIn(sheet: NamedCells): TastingInput {
  const { from } = sheet.area("scores");
  return {
    tastedOn: sheet.number("tasted_on"),
    lines: tasted.map((_, index) => {
      const score = sheet.at(from.row + index, from.column);
      return { score: typeof score === "number" ? score : "", words: String(sheet.at(from.row + index, from.column + 1)) };
    }),
    note: "",
  };
}

/** Writes what differs from the sheet; an emptied field leaves its cell alone. */
export async function writeTasting(context: Excel.RequestContext, seen: NamedCells, input: TastingInput): Promise<void> {
  const before = tastingIn(seen);
  const changes: CellChange[] = input.lines.flatMap(({ score, words }, row) => {
    const label = `what stands beside "${tasted[row]}"`;
    return [
      ...(score === "" || score === before.lines[row]?.score ? [] : [{ name: "scores", row, label, content: score }]),
      ...(words.trim() === "" || words === before.lines[row]?.words
        ? []
        : [{ name: "scores", row, column: 1, label, content: words.trim() }]),
    ];
  });
  if (input.tastedOn !== "" && input.tastedOn !== before.tastedOn)
    changes.push({ name: "tasted_on", label: "the day of the tasting", content: input.tastedOn });
  if (input.note.trim() !== "") changes.push(notesWith(seen, input.note.trim()));
  if (changes.length === 0) throw new ChangeRefused("The sheet says so already.");
  await changeCells(context, seen, changes);
}
