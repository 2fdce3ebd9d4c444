import * as z from "zod";
import { hopPlaces, type Kit } from "../../batch/contents";
import { usualKit } from "../../batch/new-batch";

/** A sheet's tables grow with what is in a batch; a file may not make a sheet of any length of it. */
const mostRows = { malt: 40, hops: 40, readings: 300, steps: 60, happened: 200 } as const;

/** Words as a cell holds them; one that a spreadsheet would take for a formula is written with an apostrophe in front (see `file-texts.ts`). */
const text = (longest: number) =>
  z
    .string()
    .max(longest)

    .refine((value) => !/[\u0000-\u0009\u000b-\u001f\u007f]/.test(value), { error: "holds characters that no cell shows" })
    .refine((value) => !/^[=+\-@]/.test(value), { error: "begins like a formula, and words are expected there" });
/** JSON can say -0, which no cell shows. */
const between = (min: number, max: number) =>
  z
    .number()
    .min(min)
    .max(max)
    .overwrite((value) => value + 0);
const blankOr = <Schema extends z.ZodType>(schema: Schema) => z.union([z.literal(""), schema]);
/** From 1 January 2000 to the end of 2099 as day numbers; 0 is a day that nobody has filled in. */
const day = between(36526, 73050.99999);
const celsiusOrFahrenheit = between(-30, 250);
const money = blankOr(between(0, 1e6));
const words = text(300);
const name = text(120);
const scale = z.enum(["SG", "P"]);

const maltLine = z.strictObject({
  ingredient: name,
  mass: between(0, 5000),
  yieldPercent: between(0, 100),
  handling: z.enum(["mash", "steep", "extract", "sugar"]),
  colour: between(0, 2000),
  cost: money,
  remark: words.optional(),
});
const hopLine = z.strictObject({
  hop: name,
  mass: between(0, 50000),
  alphaPercent: between(0, 100),
  minutes: z.union([z.enum(hopPlaces), between(0, 600)]),
  form: name,
  cost: money,
  remark: words.optional(),
});
/** A formula in a step's words is looked at afterwards, name by name. */
const stepCell = z.union([z.string().max(400).startsWith("="), words]);
const step = z.strictObject({
  what: stepCell,
  part: z.enum(["before", "boil", "after"]),
  minutes: z.union([between(0, 10000), stepCell]),
  caution: words,
  why: text(600),
});
const kit = z.strictObject(
  Object.fromEntries(Object.keys(usualKit.metric).map((field) => [field, between(-100, 100000)])) as Record<keyof Kit, z.ZodNumber>,
);
const reading = z.strictObject({
  when: day,
  reading: between(-5, 1200),
  scale,
  sampleTemperature: blankOr(celsiusOrFahrenheit),
  beerTemperature: blankOr(celsiusOrFahrenheit),
});
const taste = z.strictObject({ score: blankOr(z.int().min(1).max(5)), words });

const some = (max: number) => blankOr(between(0, max));

export const batchSchema = z.strictObject({
  id: z.string().regex(/^[A-Za-z0-9-]{0,40}$/),
  sheetName: z.string().max(31),
  batchName: name,
  number: blankOr(between(0, 1e6)),
  brewedOn: z.union([z.literal(0), day]),
  startTime: between(0, 1),
  style: name,
  method: z.enum(["extract", "all-grain"]),
  units: z.enum(["metric", "us"]),
  volume: between(0, 10000),
  topUp: between(0, 10000),
  salts: words,
  kitName: name,
  kit,
  malt: z.array(maltLine).max(mostRows.malt),
  hops: z.array(hopLine).max(mostRows.hops),
  hopStand: z.strictObject({ temperature: blankOr(celsiusOrFahrenheit), minutes: some(600) }),
  dryHoppedOn: blankOr(day),
  yeast: z.strictObject({
    name,
    packsInHand: some(1e5),
    cellsPerPack: some(1e6),
    viabilityPercent: some(100),
    pitchRate: some(100),
    attenuationPercent: some(100),
    pitchTemperature: blankOr(celsiusOrFahrenheit),
    fermentFrom: blankOr(celsiusOrFahrenheit),
    fermentTo: blankOr(celsiusOrFahrenheit),
    cost: money,
  }),
  steps: z.array(step).max(mostRows.steps).optional(),
  happened: z.array(blankOr(between(0, 73050.99999))).max(mostRows.happened),
  wort: z.strictObject({
    collected: some(10000),
    reading: blankOr(between(-5, 1200)),
    scale,
    sampleTemperature: blankOr(celsiusOrFahrenheit),
    volume: some(10000),
  }),
  readings: z.array(reading).max(mostRows.readings),
  packaging: z.strictObject({
    packagedOn: blankOr(day),
    into: z.enum(["bottles", "keg"]),
    co2Volumes: between(0, 10),
    warmestSinceFermentation: blankOr(celsiusOrFahrenheit),
    sugar: name,
    bottleKind: name,
    warmestStorage: celsiusOrFahrenheit,
    conditioningTemperature: celsiusOrFahrenheit,
    kegTemperature: celsiusOrFahrenheit,
    bottlesFilled: some(1e6),
  }),
  tasting: z.strictObject({
    tastedOn: blankOr(day),
    looks: taste,
    smells: taste,
    tastes: taste,
    feels: taste,
    again: taste,
    notes: text(2000),
  }),
});
