import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { BatchContents } from "../../../src/workbook/batch/contents";
import { exampleBatch, firstExtractBatch } from "../../../src/workbook/batch/example-batch";
import { dayNumber } from "../../../src/workbook/grid/words/day-number";
import { dayLines } from "../../../src/workbook/brewing/companion/brew-day/day-lines";
import { brewToday, markDone, takeBackDone } from "../../../src/workbook/brewing/companion/brew-day/mark-line";
import { missedPlan } from "../../../src/workbook/brewing/companion/correction/plan-and-measured";
import { corrections } from "../../../src/workbook/brewing/companion/correction/corrections";
import { writeCorrection } from "../../../src/workbook/brewing/companion/correction/write-correction";
import { carryOut, type Outcome } from "../../../src/workbook/brewing/companion/outcome";
import { packagingIn } from "../../../src/workbook/brewing/companion/packaging/packaging-form";
import { writePackaging } from "../../../src/workbook/brewing/companion/packaging/write-packaging";
import { addReading } from "../../../src/workbook/brewing/companion/reading/add-reading";
import type { NewReading } from "../../../src/workbook/brewing/companion/reading/reading-line";
import { originalGravity, writeOriginal } from "../../../src/workbook/brewing/companion/reading/original-gravity";
import { tastingIn, writeTasting } from "../../../src/workbook/brewing/companion/tasting/tasting-form";
import { instantOf } from "../../../src/workbook/brewing/companion/wall-clock";
import type { NamedCells } from "../../../src/workbook/grid/read/named-cells";
import { unpluggedCopies } from "../../../src/workbook/exchange/unplug";
import { benchTimeout } from "../../support/batch-bench";
import {
  contentOf,
  expectSame,
  expectNothingMeanwhile,
  expectRefusals,
  openCompanion,
  type CompanionBench,
} from "../../support/companion-bench";

const sample = firstExtractBatch();
const brewed = {
  ...sample,
  happened: sample.happened.slice(0, 5),
  wort: { ...sample.wort, reading: "" as const, sampleTemperature: "" as const, volume: "" as const },
  readings: sample.readings.slice(0, 2).map((line, index) => (index === 1 ? { ...line, reading: 1.011 } : line)),
  tasting: { ...sample.tasting, notes: "Mine" },
};
const fresh = exampleBatch({
  id: "test",
  sheetName: "Batch 1",
  batchName: "One",
  brewedOn: dayNumber("2026-09-05"),
  volume: 5,
  units: "us",
  topUp: 0,
  method: "extract",
});

let companion: CompanionBench;
let seen: NamedCells;
beforeAll(async () => {
  companion = await openCompanion(brewed);
}, benchTimeout);
beforeEach(async () => {
  await companion.reset();
  seen = await companion.read();
}, benchTimeout);
afterAll(() => companion.bench.dispose());

/** For a test that needs another batch; the first one is opened again afterwards. */
async function withBatch(contents: BatchContents, test: () => Promise<void>): Promise<void> {
  const first = companion;
  companion = await openCompanion(contents);
  try {
    seen = await companion.read();
    await test();
  } finally {
    companion.bench.dispose();
    companion = first;
    Object.assign(globalThis, { Excel: first.bench.Excel, Office: first.bench.Office });
  }
}

const now = instantOf(dayNumber("2026-09-05T11:33"));
const reading: NewReading = {
  when: dayNumber("2026-09-14T18:30"),
  reading: 1.013,
  scale: "SG",
  sampleTemperature: 67,
  beerTemperature: 66,
  gravity: 1.0135,
  note: "Worked out from a refractometer.",
};
const sixthLine = () => dayLines(seen)[5]!;

/** Every writer of the companion, each with something to write. */
const writers: readonly [string, () => (context: Excel.RequestContext) => Promise<void>][] = [
  ["done", () => (context) => markDone(context, seen, sixthLine(), now)],
  ["a time taken back", () => (context) => takeBackDone(context, seen, dayLines(seen)[4]!, Number(dayLines(seen)[4]!.happened))],
  ["brewing today", () => (context) => brewToday(context, seen, instantOf(dayNumber("2026-09-06T09:00")))],
  ["a reading with a note", () => (context) => addReading(context, seen, reading)],
  [
    "the original gravity",
    () => (context) =>
      writeOriginal(context, seen, {
        reading: 1.051,
        scale: "SG",
        sampleTemperature: 70,
        gravity: 1.052,
        volume: 5,

        note: "Worked out.",
      }),
  ],
  [
    "a correction",
    () => (context) => {
      const missed = missedPlan(seen, "fermenter", { volume: 5, gravity: 1.06 })!;
      return writeCorrection(context, seen, missed, corrections(missed)[0]!, dayNumber("2026-09-05T14:00"));
    },
  ],
  [
    "packaging",
    () => (context) => writePackaging(context, seen, { ...packagingIn(seen), into: "keg", packagedOn: 46284, kegTemperature: 38 }, true),
  ],
  [
    "a tasting",
    () => (context) =>
      writeTasting(context, seen, {
        tastedOn: 46298,
        lines: tastingIn(seen).lines.map(() => ({ score: 2 as const, words: "=dull" })),
        note: "Again",
      }),
  ],
];

describe.each(writers)("writing %s", (_name, writer) => {
  it(
    "changes nothing on a protected sheet, while a cell is edited, or when the sheet is gone",
    () => expectRefusals(companion, writer()),
    benchTimeout,
  );

  it(
    "writes nothing on a sheet that is protected or deleted between its look and its write",
    () => expectNothingMeanwhile(companion, writer()),
    benchTimeout,
  );

  it(
    "changes nothing on a sheet that is unplugged by now, and says so",
    async () => {
      const { bench, batch } = companion;
      await Excel.run(async (context) => {
        await unpluggedCopies(context, [batch.sheetName], { prices: true, standalone: false, copyName: "Copy" });
        context.workbook.worksheets.getItem(batch.sheetName).delete();
        context.workbook.worksheets.getItem("Copy").name = batch.sheetName;
        await context.sync();
      });
      await bench.calculate();
      const before = contentOf(bench);
      expect(await carryOut(writer())).toEqual({
        kind: "unchanged",
        message: "“Batch 1” is unplugged; plug it back in to write to it (Share, Unplug). Nothing was written.",
      });
      expectSame(bench, before);
    },
    benchTimeout,
  );
});

describe("somebody else's hand", () => {
  const failing = async (change: (context: Excel.RequestContext) => Promise<void>): Promise<string> => {
    const outcome: Outcome = await carryOut(change);
    return outcome.kind === "unchanged" ? outcome.message : `not unchanged: ${outcome.kind}`;
  };

  it(
    "is not overwritten: a time, a reading, a note that came meanwhile",
    async () => {
      const { batch, bench } = companion;
      const row = (name: string, down: number) =>
        `${batch.cellOf(name).replace(/\d+/, "")}${Number(batch.cellOf(name).replace(/\D/g, "")) + down}`;
      await Excel.run(async (context) => {
        const sheet = context.workbook.worksheets.getItem("Batch 1");
        sheet.getRange(row("happened", 5)).values = [[0.5]];
        sheet.getRange(row("readings", 2)).values = [[1.015]];
        sheet.getRange(batch.cellOf("notes")).values = [["theirs"]];
        await context.sync();
      });
      await bench.calculate();
      const before = contentOf(bench);
      expect(await failing((context) => markDone(context, seen, sixthLine(), now))).toContain("Somebody has just changed the time beside");
      expect(await failing((context) => addReading(context, seen, reading))).toContain("Somebody has just changed row 3 of the readings");
      expect(await failing((context) => writeTasting(context, seen, { ...tastingIn(seen), note: "more" }))).toContain(
        "the cell now holds theirs",
      );
      expectSame(bench, before);
    },
    benchTimeout,
  );

  it(
    "may put in rows above: the time still lands beside its line",
    async () => {
      await Excel.run(async (context) => {
        context.workbook.worksheets.getItem("Batch 1").getRange("8:9").insert("Down");
        await context.sync();
      });
      expect(await carryOut((context) => markDone(context, seen, sixthLine(), now))).toEqual({ kind: "written" });
      const after = await companion.read();
      expect(after.block("happened")[5]?.[0]).toBeCloseTo((11 * 60 + 33) / 1440, 9);
    },
    benchTimeout,
  );

  it(
    "may not replace the batch by another of the same sheet name",
    async () => {
      await companion.batch.set({ batch_id: "another" });
      expect(await failing((context) => markDone(context, seen, sixthLine(), now))).toContain("is not the batch any more");
    },
    benchTimeout,
  );
});

describe("done", () => {
  it(
    "writes the time of day in three round trips, and is taken back only as it was written",
    async () => {
      const { faults } = companion.bench.host;
      const syncs = faults.syncCount;
      await Excel.run((context) => markDone(context, seen, sixthLine(), now));
      expect(faults.syncCount - syncs).toBeLessThanOrEqual(3);
      const after = await companion.read();
      const line = dayLines(after)[5]!;
      const written = (11 * 60 + 33) / 1440;
      expect(line.happened).toBeCloseTo(written, 9);
      expect(await carryOut((context) => markDone(context, after, line, now))).toMatchObject({ kind: "unchanged" });
      expect(await carryOut((context) => takeBackDone(context, after, line, 0.3))).toMatchObject({ kind: "unchanged" });
      expect(await carryOut((context) => takeBackDone(context, after, line, written))).toEqual({ kind: "written" });
      expect(dayLines(await companion.read())[5]?.happened).toBe("");
    },
    benchTimeout,
  );
});

describe("a reading", () => {
  it(
    "goes into the first empty row with its note, and the sheet gives the gravity that was shown",
    async () => {
      await Excel.run((context) => addReading(context, seen, reading));
      const after = await companion.read();
      expect(after.block("readings").slice(0, 4).flat()).toEqual([1.03, 1.011, 1.013, ""]);
      expect(after.block("gravities")[2]?.[0]).toBeCloseTo(1.0136, 3);
      const { row, column } = after.area("readings").from;
      await Excel.run(async (context) => {
        const note = context.workbook.worksheets.getItem("Batch 1").notes.getItem(`${String.fromCharCode(64 + column)}${row + 2}`);
        note.load("content");
        await context.sync();
        expect(note.content).toBe("Worked out from a refractometer.");
      });
    },
    benchTimeout,
  );

  it(
    "finds room in a full table: a row more, all of it counted",
    async () => {
      const rows = seen.block("readings").length;
      const full = Array.from({ length: rows }, (_, index) => ({
        ...sample.readings[0]!,
        when: dayNumber("2026-09-06T18:00") + index,
        reading: 1.04 - index * 0.001,
      }));
      await withBatch({ ...sample, readings: full }, async () => {
        const writing = (context: Excel.RequestContext) =>
          addReading(context, seen, { ...reading, when: dayNumber("2026-09-30T18:00"), reading: 1.02 });
        await expectNothingMeanwhile(companion, writing);
        await companion.reset();
        await Excel.run(writing);
        const after = await companion.read();
        expect(after.block("readings").flat()).toEqual([...full.map((one) => one.reading), 1.02]);
        expect(after.block("gravities")).toHaveLength(rows + 1);
        expect(
          after
            .block("gravities")
            .flat()
            .every((gravity) => typeof gravity === "number"),
        ).toBe(true);
        expect(after.number("last_reading")).toBe(dayNumber("2026-09-30T18:00"));
        expect(after.value("fg")).toBeCloseTo(Number(after.block("gravities")[rows]?.[0]), 9);
        expect(after.text("verdict")).not.toBe("");
      });
    },
    benchTimeout,
  );
});

it(
  "a reading that finds a full table leaves the note of the last one with it",
  async () => {
    const rows = seen.block("readings").length;
    const full = Array.from({ length: rows }, (_, index) => ({
      ...sample.readings[0]!,
      when: dayNumber("2026-09-06T18:00") + index,
      reading: 1.04 - index * 0.001,
    }));
    await withBatch({ ...sample, readings: full }, async () => {
      const { from } = seen.area("readings");
      const noteAt = (row: number) => `${String.fromCharCode(64 + from.column)}${from.row + row}`;
      await Excel.run(async (context) => {
        context.workbook.worksheets.getItem("Batch 1").notes.add(noteAt(rows - 1), "The last of a full table.");
        await context.sync();
      });
      await Excel.run((context) => addReading(context, seen, { ...reading, when: dayNumber("2026-09-30T18:00") }));
      const notes = await Excel.run(async (context) => {
        const found = [rows - 1, rows].map((row) =>
          context.workbook.worksheets.getItem("Batch 1").notes.getItemOrNullObject(noteAt(row)).load("content"),
        );
        await context.sync();
        return found.map((note) => (note.isNullObject ? "" : note.content));
      });
      expect(notes).toEqual(["The last of a full table.", "Worked out from a refractometer."]);
    });
  },
  benchTimeout,
);

describe("the original gravity", () => {
  it(
    "is written once, and not over one that stands",
    async () => {
      const measured = {
        instrument: "hydrometer",
        reading: 1.051,
        scale: "SG",
        sampleTemperature: 70,
        originalBrix: "",
        volume: 5,
        sampled: "after",
        topUp: "",
      } as const;
      const { ready } = originalGravity(seen, measured);
      expect(ready?.doubts).toEqual([]);
      expect(await carryOut((context) => writeOriginal(context, seen, ready!))).toEqual({ kind: "written" });
      const after = await companion.read();
      expect(after.number("og_reached")).toBeCloseTo(ready?.gravity ?? 0, 9);
      expect(await carryOut((context) => writeOriginal(context, after, ready!))).toMatchObject({
        kind: "unchanged",
        message: expect.stringContaining("already (1.051)"),
      });
    },
    benchTimeout,
  );
});

describe("packaging", () => {
  const glass = () => ({ ...packagingIn(seen), into: "bottles" as const, packagedOn: 46284 });

  it(
    "that may burst the glass is not written, whatever the brewer says that they know",
    async () => {
      const before = contentOf(companion.bench);
      const outcome = await carryOut((context) => writePackaging(context, seen, { ...glass(), co2Volumes: 4 }, true));
      expect(outcome).toEqual({
        kind: "unchanged",
        message: expect.stringMatching(
          /passes what these bottles may bear\. Bottles already filled: do not open or move them; .* Nothing was written\.$/,
        ),
      });
      expectSame(companion.bench, before);
    },
    benchTimeout,
  );

  it(
    "before steady readings is written only knowingly",
    async () => {
      expect(seen.text("verdict")).not.toBe("steady");
      // Not steady yet, but no further from its end than a hydrometer may be wrong by: more is refused.
      const input = { ...glass(), co2Volumes: 1, bottleKind: "sparkling" };
      const before = contentOf(companion.bench);
      expect(await carryOut((context) => writePackaging(context, seen, input, false))).toEqual({
        kind: "unchanged",
        message: expect.stringContaining("The readings are not steady."),
      });
      expectSame(companion.bench, before);
      expect(await carryOut((context) => writePackaging(context, seen, input, true))).toEqual({ kind: "written" });
      expect((await companion.read()).number("packaged_on")).toBe(46284);
    },
    benchTimeout,
  );
});

describe("words", () => {
  it.each(["007", "2026-09-05", "true", "'tis"])(
    "such as %s come back as they were typed, and as they stood after a failure",
    async (words) => {
      const lines = tastingIn(seen).lines.map(() => ({ score: 3 as const, words }));
      await Excel.run((context) => writeTasting(context, seen, { ...tastingIn(seen), lines, note: "" }));
      const after = await companion.read();
      expect(tastingIn(after).lines.map((line) => line.words)).toEqual(lines.map(() => words));
      const before = contentOf(companion.bench);
      // The second round trip writes: half of it is done, and then taken back.
      companion.bench.host.faults.failAtSync(2, new Error("the host is busy"), "refused within");
      const outcome = await carryOut((context) =>
        writeTasting(context, after, { ...tastingIn(after), lines: lines.map(() => ({ score: 4 as const, words: "other" })) }),
      );
      expect(outcome.kind).toBe("unchanged");
      await companion.bench.calculate();
      expectSame(companion.bench, before);
    },
    benchTimeout,
  );

  it(
    "that begin like a formula stay words, and notes keep what stood there",
    async () => {
      await Excel.run((context) =>
        writeTasting(context, seen, {
          ...tastingIn(seen),
          lines: tastingIn(seen).lines.map(() => ({ score: 3 as const, words: "=1+1" })),
          note: "second line",
        }),
      );
      const after = await companion.read();
      expect(tastingIn(after).lines[0]).toEqual({ score: 3, words: "=1+1" });
      expect(after.text("notes")).toBe("Mine\nsecond line");
    },
    benchTimeout,
  );
});

describe("a batch of the pane's own", () => {
  it(
    "brewed on another day is moved to today",
    async () => {
      await withBatch(fresh, async () => {
        await Excel.run((context) => brewToday(context, seen, instantOf(dayNumber("2026-09-07T08:15"))));
        const after = await companion.read();
        expect(after.number("brewed_on")).toBe(dayNumber("2026-09-07"));
        expect(Math.floor(dayLines(after)[0]?.planned ?? 0)).toBe(dayNumber("2026-09-07"));
      });
    },
    benchTimeout,
  );
});
