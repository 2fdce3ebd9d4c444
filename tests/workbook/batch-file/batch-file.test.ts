import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import "../../support/fixed-seed";
import type { BatchContents } from "../../../src/workbook/batch/contents";
import { cellText } from "../../../src/workbook/grid/words/cell-text";
import { firstExtractBatch } from "../../../src/workbook/batch/example-batch";
import { usualValues } from "../../../src/workbook/batch/derived/usual-values";
import { blockFields } from "../../../src/workbook/batch/fields/blocks";
import { blocksOf } from "../../../src/workbook/batch/sheet/blocks";
import { planBatch } from "../../../src/workbook/batch/sheet/plan";
import { ourSteps as stepsOf } from "../../../src/workbook/batch/sheet/steps";
import { readBatchFile } from "../../../src/workbook/exchange/batch-file/read-batch-file";
import { isPrivate } from "../../../src/workbook/batch/private-words";
import { shareable } from "../../../src/workbook/exchange/batch-file/shareable";
import { batchFileName, writeBatchFile } from "../../../src/workbook/exchange/batch-file/write-batch-file";
import { batchToShare } from "../../../src/workbook/sheets/batch-to-share";
import type { BatchInWorkbook } from "../../../src/workbook/sheets/batches-in-workbook";
import { handSheet } from "../../support/hand-sheet";
import { anyBatch, words } from "../../support/arbitrary-batch";

const ourSteps = stepsOf("all-grain", "metric", []);
const anyStep = fc.record({
  what: fc.oneof(
    words.filter((text) => !text.startsWith("=")),
    fc.constantFrom('="Heat "&TEXT(volume,"0.0")', '=IF(N(top_up)>0,"Top up","")'),
  ),
  part: fc.constantFrom("before", "boil", "after"),
  minutes: fc.oneof(fc.integer({ min: 0, max: 300 }), fc.constant("=N(boil_minutes)+5")),
  caution: words,
  why: words,
});
const batchWithSteps: fc.Arbitrary<BatchContents> = fc
  .tuple(anyBatch, fc.option(fc.array(anyStep, { maxLength: 22 }), { nil: undefined }))
  .map(([batch, steps]) => ({ ...batch, ...(steps && { steps }) }));

describe("a batch file", () => {
  it("gives back the very batch that was shared", () => {
    fc.assert(
      fc.property(batchWithSteps, (batch) => {
        expect(readBatchFile(writeBatchFile(batch, { prices: true }))).toEqual(shareable(batch, { prices: true }));
      }),
      { numRuns: 150 },
    );
  });

  it("loses nothing but what is private", () => {
    fc.assert(
      fc.property(batchWithSteps, (batch) => {
        fc.pre(!/private/i.test(JSON.stringify(batch)));
        expect(readBatchFile(writeBatchFile(batch, { prices: true }))).toEqual(batch);
      }),
      { numRuns: 100 },
    );
  });

  it("takes our own steps, with their formulas", () => {
    const batch: BatchContents = { ...firstExtractBatch(), method: "all-grain", units: "metric", steps: ourSteps };
    expect(readBatchFile(writeBatchFile(batch, { prices: true }))).toEqual(batch);
  });

  it("takes a step whose formula another workbook would refuse as what it shows, be it a number", () => {
    const step = { what: "=Cellar!B2", part: "before", minutes: "=Cellar!B3", caution: "", why: "" } as const;
    const cells = handSheet({ steps: [[18, "before", 5, "", ""]] });
    const shared = batchToShare({ sheetName: "Batch 1", contents: { ...firstExtractBatch(), steps: [step] }, cells } as BatchInWorkbook);
    expect(readBatchFile(writeBatchFile(shared, { prices: true })).steps).toEqual([{ ...step, what: "18", minutes: 5 }]);
  });

  it("holds no line that begins a formula outside the steps, whatever the brewer typed", () => {
    const text = writeBatchFile(
      { ...firstExtractBatch(), batchName: "=1+1", tasting: { ...firstExtractBatch().tasting, notes: "- more crystal next time" } },
      { prices: true },
    );
    expect(text).toContain('"batchName": "\'=1+1"');
    expect(text).toContain('"notes": "\'- more crystal next time"');
    expect(text).not.toMatch(/": "[=+\-@]/);
  });

  it("leaves private notes behind, and prices if wanted", () => {
    const batch: BatchContents = {
      ...firstExtractBatch(),
      malt: [
        { ingredient: "Pale malt", mass: 4, yieldPercent: 80, handling: "mash", colour: 3, cost: 9, remark: "Private: from my uncle" },
      ],
      tasting: { ...firstExtractBatch().tasting, notes: "PRIVATE too thin" },
    };
    const read = readBatchFile(writeBatchFile(batch, { prices: false }));
    expect(read.tasting.notes).toBe("");
    expect(read.malt).toEqual([{ ingredient: "Pale malt", mass: 4, yieldPercent: 80, handling: "mash", colour: 3, cost: "" }]);
    expect([read.yeast.cost, ...read.hops.map(({ cost }) => cost)]).toEqual(["", "", "", ""]);
    expect(readBatchFile(writeBatchFile(batch, { prices: true })).malt[0]?.cost).toBe(9);
  });

  it.each([
    ["private", true],
    ["PRIVATE too thin", true],
    ["  Private: mine", true],
    ["- private", true],
    ["(private) keep", true],
    ["“private” keep", true],
    ["Ada:\nprivate yeast", true],
    ["private_2", true],
    ["Privateer", false],
    ["privately poured", false],
    ["not private", false],
    ["", false],
    ["2 private bottles", false],
  ])("takes %j as private: %s", (words, expected) => expect(isPrivate(words)).toBe(expected));

  // Its day had no step for opening the yeast: pitching and what follows keep their own times beside a line that has none.
  const clock = (hours: number, minutes: number) => expect.closeTo((hours * 60 + minutes) / 1440, 8) as number;
  const oldTimes: BatchContents["happened"] = [
    ...firstExtractBatch().happened.slice(0, 17),
    "",
    clock(14, 2),
    clock(14, 10),
    clock(14, 40),
  ];

  // What has been typed stays, also where today's example would say another warmest place.
  const asItWas: BatchContents = {
    ...firstExtractBatch(),
    happened: oldTimes,
    packaging: { ...firstExtractBatch().packaging, warmestStorage: 80 },
  };

  it("of version 2 still opens: what it did not know yet is as in a new batch", () => {
    const read = readBatchFile(readFileSync(new URL("./old/version-2.gylebook.json", import.meta.url), "utf8"));
    expect(read).toEqual(asItWas);
  });

  it("of version 1 still opens: the same beer, and the same mark each time", () => {
    const old = readFileSync(new URL("./old/version-1.gylebook.json", import.meta.url), "utf8");
    const { id, ...read } = readBatchFile(old);
    const { id: _, ...expected } = asItWas;
    expect(read).toEqual(expected);
    expect(id).toMatch(/^v1-[a-z0-9]+$/);
    expect(readBatchFile(old).id).toBe(id);
  });

  it("is small, and has a name that every file system takes", () => {
    expect(writeBatchFile(firstExtractBatch(), { prices: true }).length).toBeLessThan(8000);
    expect(batchFileName({ batchName: 'Grüße: "1/2"?', sheetName: "x" })).toBe("Grüße 1 2.gylebook.json");
    expect(batchFileName({ batchName: "../..", sheetName: "x" })).toBe("batch.gylebook.json");
  });
});

/** A batch of ours with as many rows in each table, so that our formulas stand in the same cells. */
function ofItsShape(batch: BatchContents): BatchContents {
  const { method, units, malt, hops, hopStand, happened, readings } = batch;
  const ours = firstExtractBatch();
  const [grain, hop] = [ours.malt[0]!, ours.hops[0]!];
  return {
    ...ours,
    method,
    units,
    malt: malt.map(() => grain),
    hops: hops.map(({ minutes }) => ({ ...hop, minutes })),
    hopStand,
    happened,
    readings,
    ...Object.fromEntries(blocksOf(batch).map((key) => [key, usualValues(blockFields[key].fields, batch)])),
  };
}

describe("words on their way into a cell", () => {
  it("never become a formula, a number or a date", () => {
    for (const text of ["=1+1", "+1", "-x", "@home", "1/2", "2026", "3-4", "5 %", "May 5", "12 Jan", "TRUE", "1e5", "10:30", "'so"])
      expect(cellText(text)).toBe(`'${text}`);
    for (const text of ["Pale malt", "Clean ale yeast, dry, 10 g", "", "No. 5", "Private"]) expect(cellText(text)).toBe(text);
  });
  it("are guarded wherever a batch sheet puts them", () => {
    fc.assert(
      fc.property(anyBatch, (batch) => {
        const ours = new Set(
          planBatch(ofItsShape(batch))
            .cells.map(({ content }) => content)
            .filter((content) => String(content).startsWith("=")),
        );
        const foreign = planBatch(batch).cells.filter(
          ({ content }) => typeof content === "string" && /^[=+\-@]/.test(content) && !ours.has(content),
        );
        expect(foreign.map(({ content }) => content)).toEqual([]);
      }),
      { numRuns: 40 },
    );
  });
});
