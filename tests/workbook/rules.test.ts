import { describe, expect, it } from "vitest";
import { exampleBatch } from "../../src/workbook/batch/example-batch";
import { isFork, messageOf, wordsOf, type Rule, type Step } from "../../src/workbook/batch/rules/rule";
import { linesOf, spokenOf } from "../../src/workbook/batch/rules/what-it-says";
import { paperSheet } from "../support/paper-sheet";

const rulesOf = (steps: readonly Step[]): Rule[] =>
  steps.flatMap((step) => (isFork(step) ? [...rulesOf(step.then), ...rulesOf(step.otherwise)] : [step]));

describe.each(
  (["us", "metric"] as const).flatMap((units) => (["extract", "all-grain"] as const).map((method) => [units, method] as const)),
)("the rules of a sheet in %s, %s", (units, method) => {
  const sheet = paperSheet(
    exampleBatch({
      id: "r",
      sheetName: "Rules",
      batchName: "Rules",
      brewedOn: 46270,
      volume: units === "us" ? 5 : 20,
      units,
      topUp: 0,
      method,
    }),
  );
  const lines = linesOf(sheet);

  it("have each an id of its own within their line", () => {
    expect(new Set(lines.map(({ id }) => id)).size).toBe(lines.length);
    // The branches of a fork hold the same first rules: whichever is taken, it is the same rule.
    for (const { id, steps } of lines) {
      const own = new Map<string, string>();
      for (const rule of rulesOf(steps)) {
        expect(own.get(rule.id) ?? rule.holds, `${id}.${rule.id}`).toBe(rule.holds);
        own.set(rule.id, rule.holds);
      }
    }
  });

  it("speak of cells that the sheet has, or of the answers that spill", () => {
    for (const { id, steps } of lines)
      for (const rule of rulesOf(steps))
        for (const name of spokenOf(rule))
          if (!/^\$?[A-Z]+\$?\d+/.test(name)) expect(sheet.has(name), `${id}.${rule.id} speaks of ${name}`).toBe(true);
  });

  it("stand on the sheet word for word, in their order", () => {
    const { from } = sheet.area("check_texts");
    lines.forEach(({ id, steps }, index) => {
      const printed = String(sheet.formulaAt(from.row + index, from.column));
      expect(printed, id).toBe(`=IFERROR(${messageOf(steps)},"Cannot be checked: a figure it needs shows an error.")`);
      for (const rule of rulesOf(steps)) expect(printed).toContain(`IF(${rule.holds},${wordsOf(rule)},`);
    });
  });
});
