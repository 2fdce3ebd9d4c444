import { describe, expect, it } from "vitest";
import { readForm, type FormValues } from "../../src/pane/new-batch/form-values";

const filled: FormValues = {
  name: "Footbridge",
  brewedOn: "2026-09-05",
  volume: "19,5",
  units: "metric",
  method: "extract",
  boil: "part",
  topUp: "9.5",
  recipe: "empty",
};

describe("the form of a new batch", () => {
  it("takes a decimal comma for a point", () => {
    expect(readForm(filled)).toEqual({
      problems: {},
      choices: {
        id: expect.stringMatching(/^[0-9a-z]{12}$/),
        sheetName: "Footbridge",
        batchName: "Footbridge",
        brewedOn: 46270,
        volume: 19.5,
        units: "metric",
        topUp: 9.5,
        method: "extract",
      },
    });
  });
  it.each(["Brewer's best", "🍺 Pale", "=1+1", "-5", "1/2".replace("/", "⁄"), "Größe 7", "x".repeat(31), "2026-09-05", "History 2"])(
    "takes the name %s, since Excel does",
    (name) => {
      expect(readForm({ ...filled, name }).choices?.sheetName).toBe(name);
    },
  );
  it("asks for no top-up water when the whole volume boils", () =>
    expect(readForm({ ...filled, boil: "whole", topUp: "?" }).choices?.topUp).toBe(0));
  it.each<[Partial<FormValues>, string, string]>([
    [{ name: " " }, "name", "needs a name"],
    ...[..."\\/?*[]:"].map((sign): [Partial<FormValues>, string, string] => [
      { name: `Pale ${sign} ale` },
      "name",
      `may not hold "${sign}"`,
    ]),
    [{ name: "'Pale" }, "name", "may not begin or end with an apostrophe"],
    [{ name: "Pale'" }, "name", "may not begin or end with an apostrophe"],
    [{ name: "History" }, "name", "keeps the name"],
    [{ name: " hISTORY " }, "name", "keeps the name"],
    [{ name: "A pale ale for a very long evening" }, "name", "has 34 characters; the name of a sheet may have 31"],
    [{ name: "🍺".repeat(16) }, "name", "has 32 characters"],
    [{ brewedOn: "" }, "brewedOn", "Which day?"],
    [{ volume: "much" }, "volume", "From 0.1 to 10000 litres"],
    [{ volume: "-3" }, "volume", "From 0.1 to 10000 litres"],
    [{ topUp: "19.5" }, "topUp", "less than"],
  ])("%j is answered beside its field", (part, field, words) => {
    const { choices, problems } = readForm({ ...filled, ...part });
    expect(choices).toBeUndefined();
    expect(problems[field as keyof typeof problems]).toContain(words);
  });
});
