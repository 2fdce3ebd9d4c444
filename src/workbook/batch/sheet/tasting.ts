import type { SheetBuilder } from "../../grid/plan/sheet-builder";
import type { BatchContents, TastingLine } from "../contents";
import { section } from "./fields";

/** Three lines of type, or two by hand. */
const notesPoints = 43;

/** 9. Tasting and notes: what it was like, so that the next one can be better. */
export function tasting(b: SheetBuilder, { tasting: t }: BatchContents): void {
  section(b, 9, "Tasting and notes", "Five to pour for anybody of legal age, one for the drain; none before you drive");
  b.put("A", "Tasted on", { style: "label" });
  b.put("B", t.tastedOn, { style: "input", format: "date", name: "tasted_on" });
  b.put("E", "Mean of the scores", { style: "label", mergeTo: "G" });
  const first = b.row + 1;
  b.put("H", `=IF(COUNT(B${first}:B${first + 4})=0,"",AVERAGE(B${first}:B${first + 4}))`, {
    style: "keyResult",
    format: "one",
    name: "score",
  });
  b.row += 1;
  const lines: [string, TastingLine][] = [
    ["Looks", t.looks],
    ["Smells", t.smells],
    ["Tastes", t.tastes],
    ["Feels", t.feels],
    ["Would brew it again", t.again],
  ];
  for (const [label, { score, words }] of lines) {
    b.put("A", label, { style: "label" });
    b.put("B", score, { style: "input", format: "whole", between: [1, 5] });
    b.put("C", words, { style: "inputText", format: "text", mergeTo: "I" });
    b.row += 1;
  }
  b.name("scores", `B${first}:B${first + 4}`);
  b.put("A", "Notes", { style: "label" });
  b.put("B", t.notes, { style: "inputWords", format: "text", mergeTo: "I", name: "notes" });
  b.height(notesPoints);
  b.row += 1;
  b.gap();
}
