import { describe, expect, it } from "vitest";
import type { BatchContents } from "../../../src/workbook/batch/contents";
import { firstExtractBatch } from "../../../src/workbook/batch/example-batch";
import { planBatch } from "../../../src/workbook/batch/sheet/plan";
import { courseOfReadings } from "../../../src/workbook/care/check/course";
import { ownLines, saidOf } from "../../../src/workbook/care/check/own-lines";
import { handSheet } from "../../support/hand-sheet";
import { paperSheet, type TypedOver } from "../../support/paper-sheet";

/* The rules of the sheet, asked of its log line by line and day by day. */
const brewed = 46271;
type Read = readonly [when: number | "", reading: number | "", scale?: "SG" | "P", sample?: number | ""];

const batch = (log: readonly Read[], packagedOn: number | "" = "", more: Partial<BatchContents> = {}): BatchContents => {
  const base = firstExtractBatch();
  return {
    ...base,
    brewedOn: brewed,
    wort: { collected: "", reading: 1.052, scale: "SG", sampleTemperature: 60, volume: 5 },
    readings: log.map(([when, reading, scale = "SG", sampleTemperature = 60]) => ({
      when: when as number,
      reading: reading as number,
      scale,
      sampleTemperature,
      beerTemperature: 66,
    })),
    packaging: { ...base.packaging, packagedOn },
    ...more,
  };
};
const sheetOf = (...given: Parameters<typeof batch>) => paperSheet(batch(...given));
const first = planBatch(batch([]))
  .names.find(({ name }) => name === "readings")!
  .range.split(":")[0]!;
const row = Number(first.slice(1));
const found = (sheet: ReturnType<typeof paperSheet>) =>
  courseOfReadings(sheet, saidOf(sheet)).map(
    ({ weight, address = "", rule = "" }) => `${weight} ${address.replace(/\d+/, (digits) => `+${Number(digits) - row}`)} ${rule}`,
  );

describe("a reading that is wrong by itself", () => {
  const good: Read = [brewed + 3, 1.03];
  it.each<[string, Read, string]>([
    ["Plato under SG", [brewed + 4, 6.2], "look B+1 course.plato-as-gravity"],
    ["points under SG", [brewed + 4, 45], "look B+1 course.points-as-gravity"],
    ["no decimal sign", [brewed + 4, 1012], "look B+1 course.no-decimal-sign"],
    ["gravity under P", [brewed + 4, 1.012, "P"], "look B+1 course.gravity-as-plato"],
    ["no day", ["", 1.012], "look A+1 course.undated"],
    ["no temperature of the sample", [brewed + 4, 1.04, "SG", ""], "look B+1 course.no-temperature"],
    ["a day before the brew day", [brewed - 1, 1.03], "look A+1 course.before-brew-day"],
    ["no beer's gravity", [brewed + 4, 0.9], "look B+1 course.uncorrected"],
  ])("is named with its cell: %s", (_, wrong, finding) => {
    expect(found(sheetOf([good, wrong]))).toEqual([finding]);
  });
  it("is named beside others that are wrong otherwise", () => {
    expect(found(sheetOf([[brewed + 4, 6.2], good, [brewed + 5, 1012]]))).toEqual([
      "look B+0 course.plato-as-gravity",
      "look B+2 course.no-decimal-sign",
    ]);
  });
  it("is none in a log that the sheet takes as it is", () => {
    expect(found(sheetOf([good, [brewed + 4, 6.2, "P"]]))).toEqual([]);
  });
});

describe("a gravity that rises", () => {
  const rising = (log: readonly Read[]) => found(sheetOf(log)).filter((one) => one.endsWith("rising"));
  it("is told at the reading at which the sheet said so, whatever followed; by the sheet's own limit", () => {
    expect(
      rising([
        [brewed + 4, 1.02],
        [brewed + 5, 1.0218],
      ]),
    ).toEqual([]);
    expect(
      rising([
        [brewed + 4, 1.02],
        [brewed + 5, 1.0222],
      ]),
    ).toEqual(["look B+1 course.rising"]);
    expect(
      rising([
        [brewed + 4, 1.02],
        [brewed + 5, 1.03],
        [brewed + 6, 1.012],
      ]),
    ).toEqual(["look B+1 course.rising"]);
    expect(
      rising([
        [brewed + 5, 1.03],
        [brewed + 4, 1.02],
      ]),
    ).toEqual(["look B+0 course.rising"]);
    expect(
      rising([
        [brewed + 5, 1.02],
        [brewed + 4, 1.03],
      ]),
    ).toEqual([]);
  });
  it("names the two gravities", () => {
    const sheet = sheetOf([
      [brewed + 4, 1.02],
      [brewed + 5, 1.03],
    ]);
    expect(courseOfReadings(sheet, saidOf(sheet))[0]?.words).toMatch(/^Gravity rose between two readings, .* from 1\.020 to 1\.030;/);
  });
});

describe("beer packaged before it had finished", () => {
  const steady: readonly Read[] = [
    [brewed + 3, 1.03],
    [brewed + 7, 1.012],
    [brewed + 8, 1.012],
  ];
  const early = (log: readonly Read[], packagedOn: number | "", more?: Partial<BatchContents>) => found(sheetOf(log, packagedOn, more));
  it("is a matter of safety, judged by what was known on that day", () => {
    expect(early(steady, brewed + 8)).toEqual([]);
    expect(early(steady, brewed + 7)).toEqual([expect.stringMatching(/^stop B\+\d+ finished\.too-early$/)]);
    const sheet = sheetOf(steady, brewed + 7);
    expect(courseOfReadings(sheet, saidOf(sheet))[0]?.words).toMatch(
      /^Packaged before two readings a day apart agreed\. The bottles: do not open or move them; .* The readings up to then say “working”\.$/,
    );
  });
  it("is told of a date before the brew day in the words of the sheet's own line, once", () => {
    const sheet = sheetOf(steady, brewed - 1);
    expect(courseOfReadings(sheet, saidOf(sheet)).map(({ weight, words }) => `${weight}: ${words}`)).toEqual([
      "stop: Packaged before it was brewed: is a date mistyped?",
    ]);
    // The hour of the day makes no difference.
    expect(early(steady, brewed)).toEqual([expect.stringMatching(/finished\.too-early$/)]);
  });
  it("counts a reading on the evening of that day, and none of the next", () => {
    const then = (second: number) =>
      early(
        [
          [brewed + 6.8, 1.012],
          [brewed + second, 1.012],
        ],
        brewed + 7,
      );
    expect(then(7.8)).toEqual([]);
    expect(then(8)).toHaveLength(1);
  });
  it("is told of a keg in a keg's words, with no reading at all, and in a stall", () => {
    const keg = { packaging: { ...firstExtractBatch().packaging, into: "keg" as const, packagedOn: brewed + 7, kegTemperature: 40 } };
    expect(early(steady, "", keg)).toEqual([expect.stringMatching(/kegged-too-early$/)]);
    expect(early([], brewed + 7)).toEqual([expect.stringMatching(/finished\.too-early$/)]);
    expect(
      early(
        [
          [brewed + 3, 1.04],
          [brewed + 7, 1.024],
          [brewed + 8, 1.024],
        ],
        brewed + 9,
      ),
    ).toEqual([expect.stringMatching(/finished\.stalled$/)]);
    expect(early(steady, "")).toEqual([]);
  });
  it("starts over after dry hops, which can wake a beer up", () => {
    expect(early(steady, brewed + 8, { dryHoppedOn: brewed + 7 })).toEqual([expect.stringMatching(/too-early-after-hops$/)]);
  });
});

describe("the lines of the sheet's own checks", () => {
  const lines = (typed: TypedOver, details: Parameters<typeof ownLines>[2] = []) => {
    const sheet = paperSheet(batch([]), typed);
    return ownLines(sheet, saidOf(sheet), details).map(({ weight, address, rule }) => ({ weight, address, rule }));
  };
  const cell = (name: string) => planBatch(batch([])).names.find((one) => one.name === name)!.range;
  it("are handed on by rule, at the typed cell that the rule speaks of", () => {
    expect(lines({})).toEqual([]);
    expect(lines({ kettle_loss: "some" })).toEqual([{ weight: "look", address: cell("kettle_loss"), rule: "volumes.kettle_loss-text" }]);
  });
  it("are left out where more was told by the same rule, and only then", () => {
    const detail = (rule: string) => [{ sheet: "any", weight: "look" as const, words: "exact", rule }];
    const typed = { "hop_alpha.0": 50 };
    // A rule about a whole column: the line itself.
    expect(lines(typed)[0]).toEqual({ weight: "look", address: expect.stringMatching(/^B1\d\d$/) as string, rule: "hops.alpha-too-high" });
    const ofHops = (rule: string) => lines(typed, detail(rule)).flatMap((one) => (one.rule?.startsWith("hops.") ? [one.rule] : []));
    expect(ofHops("hops.alpha-too-high")).toEqual([]);
    expect(ofHops("hops.mass-text")).toEqual(["hops.alpha-too-high"]);
  });
  it("of an older sheet are taken as they show", () => {
    const sheet = handSheet(
      {
        lines: [
          ["Volumes", "nothing found", ""],
          ["Hops", "look", "too long"],
          ["Packaged too early?", "stop", "stalled"],
        ],
        gylebook: 2,
      },
      { check_states: "B1:B3" },
    );
    expect(ownLines(sheet, saidOf(sheet), [])).toEqual([
      { sheet: "By hand", address: "B2", weight: "look", words: "Hops: too long" },
      { sheet: "By hand", address: "B3", weight: "stop", words: "Packaged too early?: stalled" },
    ]);
  });
});
