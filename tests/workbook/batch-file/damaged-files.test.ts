import { readFileSync, readdirSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import "../../support/fixed-seed";
import { firstExtractBatch } from "../../../src/workbook/batch/example-batch";
import { readBatchFile } from "../../../src/workbook/exchange/batch-file/read-batch-file";
import { BatchFileRefused } from "../../../src/workbook/exchange/batch-file/refused";
import { writeBatchFile } from "../../../src/workbook/exchange/batch-file/write-batch-file";
import { allDrawn } from "../../support/drawn";

const folder = new URL("./damaged/", import.meta.url);

/** What the refusal must say, so that the brewer knows what is wrong and where. */
const reasons: Readonly<Record<string, RegExp>> = {
  "a-list.json": /not a batch file/,
  "constructor.json": /“constructor”/,
  "control-characters.json": /name of the batch holds characters that no cell shows/,
  "cut-off.json": /damaged/,
  "date-as-words.json": /brewed on is “2026-09-05”/,
  "date-before-excel.json": /brewed on is -5; it must be at least 32874/,
  "date-far-away.json": /readings, row 1, day and time is 9000000; it may be at most/,
  "formula-at.json": /notes begins like a formula.*@SUM/,
  "formula-in-name.json": /name of the batch begins like a formula.*HYPERLINK/,
  "formula-minus.json": /hops, row 1, hop begins like a formula.*-2\+3/,
  "formula-plus.json": /malt, row 1, ingredient begins like a formula/,
  "formula-tab.json": /style holds characters that no cell shows/,
  "half-version.json": /version .* missing or damaged/,
  "infinite.json": /volume is Infinity/,
  "key-twice.json": /“volume” stands twice/,
  "mass-as-text.json": /malt, row 2, mass is “six”; a number is expected/,
  "missing-kit.json": /kit is missing/,
  "negative-mass.json": /malt, row 1, mass is -1; it must be at least 0/,
  "newer-version.json": /version 7; this Gylebook reads up to version 4/,
  "no-version.json": /version .* missing or damaged/,
  "not-a-number.json": /damaged/,
  "not-json.json": /damaged or is no batch file/,
  "other-json.json": /not a batch file of Gylebook/,
  "prototype-in-disguise.json": /“__proto__”/,
  "prototype.json": /“__proto__”/,
  "score-out-of-range.json": /looks, score is 11; it may be at most 5/,
  "sheet-name.json": /may not hold "\["/,
  "step-fetches.json": /steps, row 2 holds a formula with the function WEBSERVICE/,
  "step-other-workbook.json": /steps, row 2 holds a formula with/,
  "step-points-at-cells.json": /steps, row 2 holds a formula with “Sheet1!A1”/,
  "step-runs-a-program.json": /steps, row 2 holds a formula with/,
  "step-unknown-name.json": /steps, row 2 holds a formula with “salary”, which no batch sheet has/,
  "too-deep.json": /deeper than 8 levels/,
  "too-many-malts.json": /malt has more rows than the 40/,
  "too-many-readings.json": /readings has more rows than the 300/,
  "unknown-entry-outside.json": /“macros”/,
  "unknown-entry.json": /“macro”/,
  "unknown-handling.json": /handling is “boil”; it may be “mash”, “steep”, “extract”, “sugar”/,
  "unknown-units.json": /units is “imperial”; it may be “metric”, “us”/,
};

const refusal = (text: string): BatchFileRefused => {
  try {
    readBatchFile(text);
  } catch (problem) {
    if (problem instanceof BatchFileRefused) return problem;
    throw problem;
  }
  throw new Error("it was taken in");
};

describe("damaged and hostile batch files", () => {
  it("each has a reason that it is tried against", () => {
    expect(
      readdirSync(folder)
        .filter((file) => file.endsWith(".json"))
        .sort(),
    ).toEqual(Object.keys(reasons).sort());
  });
  it.each(Object.entries(reasons))("%s is refused, with the reason", (file, reason) => {
    expect(refusal(readFileSync(new URL(file, folder), "utf8")).message).toMatch(reason);
  });
  it("a file that is too big is refused before it is parsed", () => {
    expect(refusal("x".repeat(120_000)).message).toBe("This file has 120 kB; a batch file has at most 100 kB.");
  });
  it("damaged at any place, a file is refused in words or still holds a whole batch; nothing else comes of it", () => {
    const whole = writeBatchFile(firstExtractBatch(), { prices: true });
    const damages = { refused: 0, read: 0 };
    const bytes = fc.constantFrom(
      "",
      "0",
      "-",
      "9",
      '"',
      "{",
      "}",
      "[",
      "]",
      ",",
      ":",
      "=",
      "e99",
      "null",
      "true",
      "\\u0000",
      "\u202e",
      "é",
    );
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: whole.length - 1 }),
        fc.oneof({ weight: 2, arbitrary: fc.constant(1) }, fc.integer({ min: 0, max: 40 })),
        bytes,
        fc.constantFrom(true, false, false, false),
        (at, length, instead, isCutOff) => {
          const text = whole.slice(0, at) + instead + (isCutOff ? "" : whole.slice(at + length));
          try {
            const batch = readBatchFile(text);
            damages.read += 1;
            // What was taken in can be written and is the same again: nothing half-read is in it.
            expect(readBatchFile(writeBatchFile(batch, { prices: true }))).toEqual(batch);
          } catch (problem) {
            if (!(problem instanceof BatchFileRefused)) throw problem;
            damages.refused += 1;
            expect(problem.message).toMatch(/[.?]$/);
          }
        },
      ),
      { numRuns: 400 },
    );
    if (!allDrawn) return;
    expect(damages.refused).toBeGreaterThan(200);
    expect(damages.read).toBeGreaterThan(10);
  });
  it("leaves nothing behind in the language", () => {
    refusal(readFileSync(new URL("prototype.json", folder), "utf8"));
    expect(({} as Record<string, unknown>)["polluted"]).toBeUndefined();
  });
});
