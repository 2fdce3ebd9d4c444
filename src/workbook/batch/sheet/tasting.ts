import { leftField, section, type BatchBuilder, type BatchLines } from "./fields";

/** Three lines of type, or two by hand. */
const notesPoints = 43;

/** 9. Tasting and notes: what it was like, so that the next one can be better. */
export function tasting(b: BatchBuilder, { tasting: t }: BatchLines): void {
  section(b, 9, "Tasting and notes", "Five to pour for anybody of legal age, one for the drain; none before you drive");
  leftField(b, ...t.tastedOn);
  b.put("E", "Mean of the scores", { style: "label", mergeTo: "G" });
  const first = b.row + 1;
  b.put("H", `=IF(COUNT(B${first}:B${first + 4})=0,"",AVERAGE(B${first}:B${first + 4}))`, {
    style: "keyResult",
    format: "one",
    name: "score",
  });
  b.row += 1;
  for (const { score, words } of [t.looks, t.smells, t.tastes, t.feels, t.again]) {
    leftField(b, ...score);
    b.put("C", words[1].content, { style: "inputText", format: "text", mergeTo: "I" });
    b.row += 1;
  }
  b.name("scores", `B${first}:B${first + 4}`);
  const [notesLabel, { content: notes }] = t.notes;
  b.put("A", notesLabel, { style: "label" });
  b.put("B", notes, { style: "inputWords", format: "text", mergeTo: "I", name: "notes" });
  b.height(notesPoints);
  b.row += 1;
  b.gap();
}
