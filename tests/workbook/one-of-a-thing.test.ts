import { expect, it } from "vitest";
import { planBatch } from "../../src/workbook/batch/sheet/plan";
import { chance } from "../sheets/follow-the-sheet/batches";
import { calculatedSheet } from "../support/calculated-sheet";
import { share } from "../support/drawn";
import { filledBlocks } from "../support/filled-blocks";

/*
 * Nobody brews with "1 packs". A sheet with every block, some of its figures drawn to be 1 or less, is read from top to bottom: a 1 that stands alone is
 * not followed by many.
 */

const things = [
  "pack",
  "reading",
  "bottle",
  "cap",
  "keg",
  "batch",
  "line",
  "day",
  "week",
  "minute",
  "hour",
  "cell",
  "lot",
  "part",
  "rest",
  "gram",
  "hop",
];
const ofMany = new RegExp(`(?<![\\d.,/:–-]|± )\\b1 (${things.map((thing) => (thing === "batch" ? "batches" : `${thing}s`)).join("|")})\\b`);

it("no text of a sheet says many of one", () => {
  const random = chance(731);
  const ones = (value: unknown, key = ""): unknown => {
    if (typeof value === "number") return !/On$|^when$|brewedOn/.test(key) && random() < 0.4 ? (random() < 0.75 ? 1 : 0.5) : value;
    if (Array.isArray(value)) return value.map((one) => ones(one));
    if (typeof value === "object" && value !== null)
      return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, ones(one, name)]));
    return value;
  };
  const said = new Set<string>();
  let read = 0;
  const { starter, ...without } = filledBlocks("metric", "One");
  const shortOfOne = { ...without, yeast: { ...without.yeast, cellsPerPack: 5000, packsInHand: 0.5 } };
  // Lines of checks say one thing at a time: where chance rarely comes to it, it is led there.
  const led = [shortOfOne, { ...shortOfOne, yeast: { ...shortOfOne.yeast, cellsPerPack: 100 }, starter: { ...starter!, packs: 1 } }];
  const batches = Array.from({ length: Math.ceil(30 * share) }, (_, trial) => {
    const { starter: grown, ...others } = filledBlocks(trial % 2 === 0 ? "metric" : "us", "One");
    return ones(random() < 0.5 ? others : { ...others, starter: grown }) as ReturnType<typeof filledBlocks>;
  });
  for (const batch of [...led, ...batches]) {
    for (const { value } of calculatedSheet(planBatch(batch)).filled()) {
      if (typeof value !== "string") continue;
      read += 1;
      if (ofMany.test(value)) said.add(value);
    }
  }
  expect([...said]).toEqual([]);
  expect(read).toBeGreaterThan(1000);
});
