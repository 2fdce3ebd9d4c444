import { expect, test } from "vitest";
import { fileNameFor } from "../../../src/bench/page/naming/file-name";

/* Microsoft, "Naming files, paths, and namespaces": reserved characters and names, no point or blank at the end. */
test.each([
  ["Quillmarsh Mild", "Quillmarsh Mild"],
  ["Season 2026-2027", "Season 2026-2027"],
  ["Pale: 1/2 of <it>?", "Pale  1 2 of  it"],
  ["Weißbier & Grätzer, 50 %", "Weißbier & Grätzer, 50 %"],
  ["CON", "CON_"],
  ["nul.tar", "nul_.tar"],
  ["com1", "com1_"],
  ["LPT¹", "LPT¹_"],
  ["Console", "Console"],
  ["com", "com"],
  ["  ..hidden. ", "hidden"],
  ["end. . .", "end"],
  ["a\u202Egpj.b\u0000", "a gpj.b"],
  ["???", "workbook"],
  ["", "workbook"],
])("%j is saved as %j", (name, file) => expect(fileNameFor(name)).toBe(file));

test("a long name is cut between letters, not within one, and does not end in a blank", () => {
  // 49 of four bytes, three letters and a blank are 200 bytes, the last of which goes again.
  expect(fileNameFor(`${"🍺".repeat(49)}xyz ${"x".repeat(300)}`)).toBe(`${"🍺".repeat(49)}xyz`);
  expect(fileNameFor("🍺".repeat(99))).toBe("🍺".repeat(50));
  expect(fileNameFor("ü".repeat(101))).toBe("ü".repeat(100));
});
