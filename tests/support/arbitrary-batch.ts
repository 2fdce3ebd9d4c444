import fc from "fast-check";
import { hopPlaces, type BatchContents, type Filled } from "../../src/workbook/batch/contents";
import { forSheet, type NumberField } from "../../src/workbook/batch/describe/field";
import { kitFields } from "../../src/workbook/batch/fields/kit";
import { newBatch } from "../../src/workbook/batch/new-batch";
import { usualValues } from "../../src/workbook/batch/derived/usual-values";
import { blockFields } from "../../src/workbook/batch/fields/blocks";
import { anyBlocks } from "./arbitrary-blocks";
import { convertUnits } from "../../src/workbook/batch/scale/convert-units";

const between = (min: number, max: number, step = 0.01) =>
  fc.integer({ min: Math.ceil(min / step), max: Math.floor(max / step) }).map((count) => Number((count * step).toFixed(6)));
const orBlank = <T>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T | ""> => fc.option(arbitrary, { nil: "" as const });

/** A plan that a brewer could have made: a pale base, perhaps something dark and sugar, a few hops. In metric units. */
export const plausiblePlan: fc.Arbitrary<BatchContents> = fc
  .record({
    method: fc.constantFrom("extract", "all-grain"),
    volume: between(8, 60, 0.5),
    pointsPerL: between(0.12, 0.25),
    topUpShare: fc.constantFrom(0, 0, 0.3),
    dark: between(0.03, 0.15),
    darkColour: between(60, 900, 1),
    sugarShare: fc.constantFrom(0, 0, 0.08),
    hops: fc.array(
      fc.record({ perL: between(0.5, 4, 0.1), alphaPercent: between(2, 16, 0.1), minutes: fc.constantFrom(60, 45, 20, 10, 5, 0) }),
      { minLength: 1, maxLength: 5 },
    ),
    altitude: between(0, 2000, 10),
  })
  .map(({ method, volume, pointsPerL, topUpShare, dark, darkColour, sugarShare, hops, altitude }) => {
    const batch = newBatch({
      id: "p",
      sheetName: "Plan",
      batchName: "Plan",
      brewedOn: 46270,
      volume,
      units: "metric",
      topUp: Number((volume * topUpShare).toFixed(2)),
      method,
    });
    const total = volume * pointsPerL;
    const base = method === "extract" ? ("extract" as const) : ("mash" as const);
    const lines = [
      { ingredient: "Base", mass: total * (1 - dark - sugarShare), yieldPercent: 80, handling: base, colour: 6, cost: 10 },
      {
        ingredient: "Dark",
        mass: total * dark,
        yieldPercent: 70,
        handling: method === "extract" ? ("steep" as const) : ("mash" as const),
        colour: darkColour,
        cost: "" as const,
      },
      ...(sugarShare
        ? [{ ingredient: "Sugar", mass: total * sugarShare, yieldPercent: 100, handling: "sugar" as const, colour: 0, cost: "" as const }]
        : []),
    ];
    return {
      ...batch,
      kit: { ...batch.kit, altitude, kettleSize: 200 },
      malt: lines.map((line) => ({ ...line, mass: Number(Math.max(0.01, line.mass).toFixed(2)) })),
      hops: hops.map(({ perL, alphaPercent, minutes }) => ({
        hop: "Hop",
        mass: Number((perL * volume).toFixed(1)),
        alphaPercent,
        minutes,
        form: "pellets",
        cost: "" as const,
      })),
      yeast: { ...batch.yeast, name: "Yeast", attenuationPercent: 75 },
    };
  });

/** Words as a sheet can hold them: one line, no blanks around; also those that look like formulas. */
export const words = fc.oneof(
  fc.string({ maxLength: 40, unit: "grapheme" }).map(clean),
  fc.constantFrom("=1+1", "+2 days", "- more crystal", "@home", "'quoted", "", "Größe", "1/2", "private: mine is better"),
);
function clean(text: string): string {
  return text.replace(/[\u0000-\u001f\u007f-\u009f\u2028\u2029\ufeff]/g, "").trim();
}

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map((value) => value + 0);
const filled = (min: number, max: number): fc.Arbitrary<Filled<number>> => orBlank(number(min, max));
const score = fc.record({ score: orBlank(fc.integer({ min: 1, max: 5 })), words });
const day = number(40000, 50000);
const remark = fc.oneof(
  fc.constant({}),
  words.filter((text) => text !== "").map((text) => ({ remark: text })),
);

/** What the sheet takes of a figure, up to 500. */
function withinLimits({ limits }: NumberField): fc.Arbitrary<number> {
  const [from, to] = forSheet(limits, { units: "metric", method: "all-grain" });
  return number(Math.max(0, from), Math.min(500, to));
}

/** Anything that a batch sheet may hold, plausible or not; also more rows than a new sheet's tables have. */
const usualBatch: fc.Arbitrary<BatchContents> = fc.record({
  id: fc.stringMatching(/^[a-z0-9]{12}$/),
  sheetName: fc
    .stringMatching(/^[A-Za-z0-9 ]{0,20}[A-Za-z]$/)
    .filter((name) => name.toLowerCase() !== "history")
    .map((name) => name.trim()),
  batchName: words,
  number: filled(0, 10000),
  brewedOn: day,
  startTime: number(0, 0.999),
  style: words,
  method: fc.constantFrom("extract", "all-grain"),
  units: fc.constantFrom("metric", "us"),
  volume: number(0.1, 10000),
  topUp: number(0, 10000),
  salts: words,
  kitName: words,
  kit: fc.record(
    Object.fromEntries(Object.entries(kitFields).map(([key, field]) => [key, withinLimits(field)])) as {
      [Field in keyof BatchContents["kit"]]: fc.Arbitrary<number>;
    },
  ),
  malt: fc.array(
    fc
      .tuple(
        fc.record({
          ingredient: words,
          mass: number(0, 1000),
          yieldPercent: number(0, 100),
          handling: fc.constantFrom("mash", "steep", "extract", "sugar"),
          colour: number(0, 2000),
          cost: filled(0, 1000),
        }),
        remark,
      )
      .map(([line, more]) => ({ ...line, ...more })),
    { maxLength: 9 },
  ),
  hops: fc.array(
    fc
      .tuple(
        fc.record({
          hop: words,
          mass: number(0, 5000),
          alphaPercent: number(0, 30),
          minutes: fc.oneof({ weight: 3, arbitrary: number(0, 240) }, { weight: 1, arbitrary: fc.constantFrom(...hopPlaces) }),
          form: words,
          cost: filled(0, 1000),
        }),
        remark,
      )
      .map(([line, more]) => ({ ...line, ...more })),
    { maxLength: 9 },
  ),
  hopStand: fc.record({ temperature: filled(0, 212), minutes: filled(0, 120) }),
  dryHoppedOn: orBlank(day),
  yeast: fc.record({
    name: words,
    packsInHand: filled(0, 100),
    cellsPerPack: filled(0, 1000),
    viabilityPercent: filled(0, 100),
    pitchRate: filled(0, 5),
    attenuationPercent: filled(1, 100),
    pitchTemperature: filled(0, 100),
    fermentFrom: filled(0, 100),
    fermentTo: filled(0, 100),
    cost: filled(0, 100),
  }),
  happened: fc.array(filled(0, 0.999), { maxLength: 40 }),
  wort: fc.record({
    collected: filled(0, 10000),
    reading: filled(0, 40),
    scale: fc.constantFrom("SG", "P"),
    sampleTemperature: filled(0, 200),
    volume: filled(0, 10000),
  }),
  readings: fc.array(
    fc.record({
      when: day,
      reading: number(0.9, 40),
      scale: fc.constantFrom("SG", "P"),
      sampleTemperature: filled(-10, 200),
      beerTemperature: filled(-10, 200),
    }),
    { maxLength: 20 },
  ),
  packaging: fc.record({
    packagedOn: orBlank(day),
    into: fc.constantFrom("bottles", "keg"),
    co2Volumes: number(0.5, 8),
    warmestSinceFermentation: filled(-10, 200),
    sugar: fc.constantFrom("dextrose", "sucrose", "honey"),
    bottleKind: fc.constantFrom("ordinary", "heavy"),
    warmestStorage: number(-10, 200),
    conditioningTemperature: number(-10, 200),
    kegTemperature: number(-10, 200),
    bottlesFilled: filled(0, 100000),
    otherCost: filled(0, 100),
  }),
  tasting: fc.record({ tastedOn: orBlank(day), looks: score, smells: score, tastes: score, feels: score, again: score, notes: words }),
});

/** The same with whatever blocks somebody may have chosen. */
export const anyBatch: fc.Arbitrary<BatchContents> = usualBatch.chain((batch) =>
  anyBlocks(words, batch).map((blocks) => ofItsMethod({ ...batch, ...blocks })),
);

/** A sheet to steep on has no place for a mash and what is left in its tun. */
function ofItsMethod(batch: BatchContents): BatchContents {
  if (batch.method === "all-grain") return batch;
  const { beforeBoil, waterTreatment } = batch;
  const { mash } = usualValues(blockFields.waterTreatment.fields, batch);
  return {
    ...batch,
    ...(beforeBoil && { beforeBoil: { ...beforeBoil, tunLeft: "" } }),
    ...(waterTreatment && { waterTreatment: { ...waterTreatment, mash } }),
  };
}

const gravity = between(0.99, 1.1, 0.001);
const reading = fc
  .record({ gravity, scale: fc.constantFrom("SG", "SG", "P"), temperature: orBlank(between(4, 40, 0.5)) })
  .map(({ gravity: sg, scale, temperature }) => ({
    reading: scale === "P" ? Number(((sg - 1) * 250).toFixed(1)) : sg,
    scale: scale as "SG" | "P",
    temperature,
  }));

/** A plausible plan in either unit system that may have been brewed, read and packaged. */
export const batchOnItsWay: fc.Arbitrary<BatchContents> = fc
  .record({
    plan: plausiblePlan,
    units: fc.constantFrom("metric", "us"),
    original: fc.option(reading),
    log: fc.array(reading, { maxLength: 6 }),
    packaged: fc.boolean(),
    into: fc.constantFrom("bottles", "keg"),
  })
  .map(({ plan, units, original, log, packaged, into }) => {
    const brewed: BatchContents = {
      ...plan,
      wort: original
        ? { collected: "", reading: original.reading, scale: original.scale, sampleTemperature: original.temperature, volume: plan.volume }
        : plan.wort,
      readings: log.map(({ reading: value, scale, temperature }, index) => ({
        when: 46272.5 + 1.5 * index,
        reading: value,
        scale,
        sampleTemperature: temperature,
        beerTemperature: temperature,
      })),
      packaging: { ...plan.packaging, into, packagedOn: packaged ? 46290 : "" },
    };
    return convertUnits(brewed, units);
  });

export interface Typed {
  /** Which of the sheet's input cells, counted round. */
  readonly place: number;
  readonly content: string | number;
}

/** What hands do to a sheet: cells emptied, words for numbers, amounts with their units, numbers out of all bounds. */
export const typedByHand: fc.Arbitrary<Typed[]> = fc.array(
  fc.record({
    place: fc.nat(9999),
    content: fc.oneof(
      { weight: 3, arbitrary: fc.constantFrom<(string | number)[]>("", "", "", "some", "12 kg", "?", 0, -1, 1e9) },
      { weight: 1, arbitrary: between(-5, 300) },
    ),
  }),
  { maxLength: 12 },
);
