import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import { charactersOfALine } from "../../src/workbook/batch/rules/checks";
import { exampleBatch, firstExtractBatch } from "../../src/workbook/batch/example-batch";
import { planBatch } from "../../src/workbook/batch/sheet/plan";
import { address, position } from "../../src/workbook/grid/plan/addresses";
import { benchTimeout, insertOn, openBatchBench, type BatchSheet } from "../support/batch-bench";

/* What a brewer may mistype, and what the sheet's own checks then say: in words, with the usual cause and what to trust. */

const sample = { ...firstExtractBatch(), sheetName: "Sample" };
const choices = { id: "bad", batchName: "Any", brewedOn: 46270, volume: 5, units: "us", topUp: 0 } as const;
const batches = {
  sample,
  part: exampleBatch({ ...choices, sheetName: "Part", topUp: 2.5, method: "extract" }),
  mashed: exampleBatch({ ...choices, sheetName: "Mashed", method: "all-grain" }),
  metric: exampleBatch({ ...choices, sheetName: "Metric", units: "metric", volume: 20, method: "extract" }),
};
type Which = keyof typeof batches;

let bench: HeadlessBench;
let sheet: BatchSheet;
/** A workbook with this batch alone: each calculation goes through every formula of a workbook. */
const alone = (which: Which) => {
  beforeAll(async () => {
    bench = await openBatchBench();
    sheet = await insertOn(bench, batches[which]);
  }, benchTimeout);
  afterAll(async () => {
    // What was put back leaves nothing behind.
    await saidWith(which, {});
    expect(sheet.complaints()).toEqual([]);
    typedOver = {};
    bench.dispose();
  });
};

type Typed = Readonly<Record<string, string | number>>;

/** "og_reading", or a cell so many columns and rows from a name's first: "readings+0,4". */
function cellOf(place: string): string {
  const [name = "", offset = "0,0"] = place.split("+");
  const [right = 0, down = 0] = offset.split(",").map(Number);
  const { row, column } = position(sheet.cellOf(name));
  return address(row + down, column + right);
}

/** Writes as a brewer types, formulas too, and waits. */
async function type(cells: Typed): Promise<void> {
  await Excel.run(async (context) => {
    const worksheet = context.workbook.worksheets.getItem(sheet.sheetName);
    for (const [cell, content] of Object.entries(cells)) worksheet.getRange(cell).formulas = [[content]];
    await context.sync();
  });
  await bench.calculate();
}

interface Said {
  readonly complaints: ReturnType<BatchSheet["complaints"]>;
  readonly og: unknown;
  readonly shown: readonly string[];
}

/** Cells to be put back before the next thing is typed: one calculation serves both. */
let typedOver: Typed = {};

/** What the sheet says with these cells typed over, and with everything as it was before them. */
async function saidWith(which: Which, typed: Typed): Promise<Said> {
  const planned = new Map(planBatch(batches[which]).cells.map(({ address: cell, content }) => [cell, content]));
  const cells = Object.fromEntries(Object.entries(typed).map(([place, content]) => [cellOf(place), content]));
  await type({ ...typedOver, ...cells });
  typedOver = Object.fromEntries(Object.keys(cells).map((cell) => [cell, planned.get(cell) ?? ""]));
  const { row: lastRow } = position(sheet.rangeOf("check_texts").split(":")[1] ?? "");
  const shown = Array.from({ length: lastRow }, (_, row) =>
    [..."ABCDEFGHI"].map((column) => String(bench.valueAt(sheet.sheetName, `${column}${row + 1}`) ?? "")),
  ).flat();
  return { complaints: sheet.complaints(), og: sheet.get("og"), shown };
}

const original = "Gravity against the malt";
const course = "Course of the gravity";
const finished = "Packaged too early?";
const pressure = "Pressure in the bottle";

/** Every case: what is typed where, the check that must speak, its state and its words. */
const cases: readonly (readonly [what: string, which: Which, typed: Typed, label: string, state: "look" | "stop", words: RegExp])[] = [
  // The original gravity: what malt and volume give is trusted, and the usual cause is named.
  [
    "1.104 where 1.049 must come out, topped up",
    "part",
    { og_reading: 1.104, og_temperature: 60 },
    original,
    "look",
    /^Reading 1\.104 is more than the malt can give \(1\.049\)\. Usual cause: sampled before the top-up water was mixed in\. Trust 1\.049; stir, sample again\.$/,
  ],
  [
    "1.032 where 1.049 must come out, topped up",
    "part",
    { og_reading: 1.032, og_temperature: 60 },
    original,
    "look",
    /^Reading 1\.032 is less than the malt gives \(1\.049\)\. Usual cause: top-up water lying on top, not mixed in\. Trust 1\.049/,
  ],
  [
    "1.104 where 1.051 must come out, all boiled",
    "sample",
    { og_reading: 1.104 },
    original,
    "look",
    /more than the malt can give \(1\.051\)\. Usual cause: extract or added water not stirred in, or less wort than written\. Trust 1\.051/,
  ],
  [
    "1.032 where 1.051 must come out, all boiled",
    "sample",
    { og_reading: 1.032 },
    original,
    "look",
    /less than the malt gives \(1\.051\)\. Usual cause: extract left in the tin or on the bottom, or more wort than written\. Trust 1\.051/,
  ],
  ["an original gravity below the final one", "sample", { og_reading: 1.01 }, original, "look", /less than the malt gives .* Trust 1\.051/],
  [
    "1.104 from a mash that holds 1.068 at most",
    "mashed",
    { og_reading: 1.104, og_temperature: 60 },
    original,
    "look",
    /^Reading 1\.104 is more than all the sugar of this malt can give\. Usual cause: not stirred, or a wrong volume\. Trust 1\.048/,
  ],
  [
    "a mash that gave little",
    "mashed",
    { og_reading: 1.03, og_temperature: 60 },
    original,
    "look",
    /gave 44 % of its yield, planned were 70 %\. The sheet goes by the reading/,
  ],
  [
    "letters",
    "sample",
    { og_reading: "ten fifty" },
    original,
    "look",
    /“ten fifty” is a text, not a number\. .* Until then trust 1\.051\.$/,
  ],
  [
    "a decimal sign of another country",
    "sample",
    { og_reading: "'1,050" },
    original,
    "look",
    /“1,050” is a text, .* decimal sign of your Excel/,
  ],
  ["no decimal sign", "sample", { og_reading: 1050 }, original, "look", /^Write 1\.050 instead of 1050\. Until then trust 1\.051\.$/],
  ["points alone", "sample", { og_reading: 52 }, original, "look", /^Write 1\.052 instead of 52\./],
  [
    "°P where SG belongs",
    "sample",
    { og_reading: 12.8 },
    original,
    "look",
    /^12\.8 looks like degrees Plato, but the scale says SG: set the scale to P\./,
  ],
  ["SG where °P belongs", "sample", { og_scale: "P" }, original, "look", /°P\? That looks like specific gravity: set the scale to SG\./],
  [
    "an error in the reading",
    "sample",
    { og_reading: "=1/0" },
    original,
    "look",
    /shows an error: type the number\. Until then trust 1\.051/,
  ],
  ["an error in its temperature", "sample", { og_temperature: "=NA()" }, original, "look", /^Sample temperature shows an error/],
  ["an absurd temperature", "sample", { og_temperature: 400 }, original, "look", /^A sample at 400 °F\? Look at the thermometer again\./],
  ["°C on a sheet in °F", "sample", { og_temperature: 21 }, original, "look", /^A sample at 21 °F\? That looks like °C\./],
  [
    "°F on a sheet in °C",
    "metric",
    { og_reading: 1.05, og_temperature: 150 },
    original,
    "look",
    /^A sample at 150 °C\? That looks like °F\./,
  ],
  [
    "no temperature of the sample",
    "sample",
    { og_temperature: "" },
    original,
    "look",
    /^The reading does not count yet: the sample's temperature is missing\.$/,
  ],
  [
    "a hydrometer calibrated at 20 °F",
    "sample",
    { calibrated_at: 20 },
    original,
    "look",
    /cannot be corrected: look at the reading, its scale and both temperatures/,
  ],
  // The malt table.
  ["a mass with letters", "sample", { malt: "'0,75" }, original, "look", /^Mass of a malt: a text stands where a number belongs/],
  ["a negative mass", "sample", { malt: -1 }, original, "look", /^Mass of a malt: less than nothing cannot be\.$/],
  ["an error in a mass", "sample", { malt: "=NA()" }, original, "look", /^Mass of a malt: a cell shows an error/],
  ["a yield as a share of one", "sample", { "malt+1,0": 0.74 }, original, "look", /^A malt's yield is 1 % or less: type 74 for 74 %\.$/],
  ["a yield typed as points", "sample", { "malt+1,0": 36 }, original, "look", /^A malt's yield is 20 to 46 %: that looks like points/],
  ["a yield above all", "sample", { "malt+1,0": 740 }, original, "look", /above 100 %/],
  ["a handling that is none", "sample", { "malt+2,0": "boil" }, original, "look", /none of mash, steep, extract and sugar/],
  ["a handling still missing", "sample", { "malt+2,0": "" }, original, "look", /^A malt lacks its mass, yield or handling/],
  ["an efficiency as a share of one", "mashed", { grain_efficiency: 0.7 }, original, "look", /^Mash efficiency: type 70 for 70 %\.$/],
  // Volumes and water.
  ["no volume", "sample", { volume: "" }, "Volumes", "look", /^Into the fermenter: no volume yet\.$/],
  ["a volume of 0", "sample", { volume: 0 }, "Volumes", "look", /no volume yet/],
  ["a negative volume", "sample", { volume: -5 }, "Volumes", "look", /^Into the fermenter: -5 is less than nothing\.$/],
  ["a volume with a decimal comma", "sample", { volume: "'5,0" }, "Volumes", "look", /“5,0” is a text, not a number/],
  ["an error in the volume", "sample", { volume: "=NA()" }, "Volumes", "look", /^Into the fermenter shows an error/],
  ["a volume of a lake", "sample", { volume: 5000000 }, "Volumes", "look", /more than this sheet can calculate with/],
  ["top-up water that leaves nothing to boil", "sample", { top_up: 5 }, "Volumes", "look", /nothing is left to boil/],
  ["negative top-up water", "sample", { top_up: -1 }, "Volumes", "look", /^Top-up water: -1 is less than nothing\.$/],
  ["top-up water in words", "sample", { top_up: "some" }, "Volumes", "look", /^Top-up water: “some” is a text/],
  ["a boil in words", "sample", { boil_minutes: "an hour" }, "Volumes", "look", /^Boil: “an hour” is a text/],
  ["boiling away a lake", "sample", { boil_off: 7 }, "Volumes", "look", /More than the whole kettle would boil away/],
  ["negative boiling away", "sample", { boil_off: -1 }, "Volumes", "look", /less than nothing/],
  [
    "a blocked answer of the water budget",
    "sample",
    { "boil_minutes+15,2": "mine" },
    "Volumes",
    "look",
    /^The water cannot be calculated: click on Q\d+ .* cells below and beside it empty\.$/,
  ],
  [
    "a negative volume reached",
    "sample",
    { volume_reached: -5 },
    "Volumes",
    "look",
    /^Volume in the fermenter: -5 is less than nothing\.$/,
  ],
  ["a volume reached in words", "sample", { volume_reached: "five" }, "Volumes", "look", /“five” is a text/],
  [
    "a volume reached far from the plan",
    "sample",
    { volume_reached: 3 },
    "Volumes",
    "look",
    /^In the fermenter are 3, planned were 5 US gal/,
  ],
  ["racking that loses everything", "sample", { bottling_loss: 6 }, "Volumes", "look", /nothing is left to fill/],
  [
    "a kettle that is too small",
    "sample",
    { kettle_size: 5 },
    "Room in the kettle",
    "stop",
    /^Will not fit: it needs 6\.1\d US gal hot, the kettle holds 5\.00\./,
  ],
  // Steeping and mash.
  ["steeping in words", "sample", { soak_temperature: "hot" }, "Steeping", "look", /“hot” is a text/],
  [
    "steeping at °C on a sheet in °F",
    "sample",
    { soak_temperature: 68 },
    "Steeping",
    "look",
    /draws next to nothing out of the grain\. Is that °C\?$/,
  ],
  ["steeping too hot", "sample", { soak_temperature: 185 }, "Steeping", "look", /above 170 °F draws harsh taste/],
  ["steeping too hot, metric", "metric", { soak_temperature: 85 }, "Steeping", "look", /above 77 °C draws harsh taste/],
  ["steeping for an hour", "sample", { soak_minutes: 60 }, "Steeping", "look", /half an hour does/],
  [
    "a mash at °C on a sheet in °F",
    "mashed",
    { soak_temperature: 67 },
    "Mash",
    "look",
    /^A mash at 67 °F hardly turns starch into sugar\.$/,
  ],
  ["a mash in words", "mashed", { soak_temperature: "hot" }, "Mash", "look", /^Mash at: “hot” is a text/],
  ["a mash that is a soup", "mashed", { mash_thickness: 3 }, "Mash", "look", /more water than the batch needs/],
  // Hops.
  [
    "alpha acid as a share of one",
    "sample",
    { hop_alpha: 0.05 },
    "Hops",
    "look",
    /below 0\.3 %\? Type it as on the packet: 5 for 5 %, not 0\.05\.$/,
  ],
  ["alpha acid without its decimal sign", "sample", { hop_alpha: 85 }, "Hops", "look", /alpha acid of 85 %\? No hop has so much/],
  ["alpha acid as a text", "sample", { hop_alpha: "'8,5" }, "Hops", "look", /^Alpha acid of a hop: a text stands/],
  ["alpha acid still missing", "sample", { hop_alpha: "" }, "Hops", "look", /^A hop lacks its mass, alpha acid or minutes/],
  ["a hop's mass with its unit", "sample", { hops: "'0.9 oz" }, "Hops", "look", /^Mass of a hop: a text stands/],
  ["a negative mass of hops", "sample", { hops: -1 }, "Hops", "look", /^Mass of a hop: less than nothing cannot be\.$/],
  ["minutes longer than the boil", "sample", { hop_minutes: 90 }, "Hops", "look", /^A hop is to boil longer than the boil lasts\.$/],
  [
    "minutes in words",
    "sample",
    { hop_minutes: "early" },
    "Hops",
    "look",
    /^Minutes left of a hop: type the minutes, 0 for flame-out, or first wort, stand or dry\.$/,
  ],
  [
    "a hop that stands without a stand",
    "sample",
    { hop_minutes: "stand" },
    "Hops",
    "look",
    /^A hop is to stand, but the stand lacks its temperature or minutes/,
  ],
  [
    "a stand hotter than the boil",
    "sample",
    { hop_minutes: "stand", stand_temperature: 240, stand_minutes: 20 },
    "Hops",
    "look",
    /^A stand at 240 is hotter than the boil \(212\)/,
  ],
  [
    "first wort without a boil",
    "sample",
    { hop_minutes: "first wort", "hop_minutes+0,1": "dry", "hop_minutes+0,2": 0, boil_minutes: 0 },
    "Hops",
    "look",
    /^A hop at first wort counts by the boil, and there is none/,
  ],
  [
    "a step without its part of the day",
    "sample",
    { "steps+1,0": "" },
    "Clock of the brew day",
    "look",
    /^The clock waits: a step has no part of the day/,
  ],
  [
    "the label's dose in words",
    "sample",
    { sanitiser_per_volume: "some" },
    "Clock of the brew day",
    "look",
    /^Sanitiser dose: “some” is a text/,
  ],
  ["an error among the hops", "sample", { hop_alpha: "=NA()" }, "Hops", "look", /a cell shows an error/],
  [
    "a blocked column of bitterness",
    "sample",
    { "hop_minutes+3,1": "mine" },
    "Hops",
    "look",
    /^The bitterness cannot be calculated: click on G\d+ .* empty below\.$/,
  ],
  [
    "no hops at all",
    "sample",
    Object.fromEntries([0, 1, 2].flatMap((row) => [0, 1, 2, 3].map((column) => [`hop_plan+${column},${row}`, ""]))),
    "Hops",
    "look",
    /^Brewed without hops\?/,
  ],
  // Yeast.
  [
    "no yeast",
    "sample",
    { yeast_name: "", packs_in_hand: "", cells_per_pack: "", attenuation: "" },
    "Yeast",
    "look",
    /^What apparent attenuation do you expect\? .* stopped too early\.$/,
  ],
  ["packs in words", "sample", { packs_in_hand: "two" }, "Yeast", "look", /“two” is a text/],
  ["too little yeast", "sample", { packs_in_hand: 1 }, "Yeast", "look", /2 packs wanted, 1 in hand/],
  ["attenuation as a share of one", "sample", { attenuation: 0.75 }, "Yeast", "look", /^Apparent attenuation: type 75 for 75 %\.$/],
  ["attenuation above all", "sample", { attenuation: 750 }, "Yeast", "look", /More than all of it cannot be/],
  [
    "pitching into hot wort",
    "sample",
    { pitch_temperature: 90 },
    "Temperature of the beer",
    "look",
    /^Pitching at 90 °F harms the yeast: chill below 80 °F\.$/,
  ],
  ["no pitching temperature", "sample", { pitch_temperature: "" }, "Temperature of the beer", "look", /does not know how far to chill/],
  ["a yeast's limits exchanged", "sample", { ferment_from: 75 }, "Temperature of the beer", "look", /are the two exchanged\?$/],
  [
    "beer in °C on a sheet in °F",
    "sample",
    { beer_temperatures: 20 },
    "Temperature of the beer",
    "look",
    /so cold that the yeast may stop\. Is that °C\?$/,
  ],
  ["beer too warm", "sample", { beer_temperatures: 90 }, "Temperature of the beer", "look", /too warm for this yeast/],
  ["beer's temperature in words", "sample", { beer_temperatures: "warm" }, "Temperature of the beer", "look", /is a text, not a number/],
  // Readings.
  [
    "a final gravity above the original one",
    "sample",
    { "readings+0,4": 1.06 },
    course,
    "look",
    /^Gravity rose between two readings, which beer cannot do/,
  ],
  [
    "all readings above the original gravity",
    "sample",
    { "readings+0,0": 1.07, "readings+0,1": "", "readings+0,2": "", "readings+0,3": "", "readings+0,4": "", packaged_on: "" },
    course,
    "look",
    /^Gravity now is above the original gravity: one of the two is wrong\.$/,
  ],
  ["a reading dated before the brew day", "sample", { reading_times: 46260 }, course, "look", /before the brew day: is a date mistyped\?$/],
  ["readings out of order", "sample", { "reading_times+0,2": 46275.5 }, course, "look", /before the one above it: is a date mistyped\?/],
  ["a reading typed twice", "sample", { "reading_times+0,2": 46276.7708333333 }, course, "look", /^Two readings at one moment/],
  [
    "a reading without its date",
    "sample",
    { "reading_times+0,4": "" },
    course,
    "look",
    /^A reading has no date and time, so it counts for nothing\.$/,
  ],
  ["only a reading without its date", "mashed", { readings: 1.02, "readings+2,0": 68 }, course, "look", /^A reading has no date and time/],
  [
    "a reading without the temperature of its sample",
    "sample",
    { "readings+2,4": "" },
    course,
    "look",
    /^A reading has no temperature of its sample, so it counts for nothing\. Type how warm the sample was/,
  ],
  [
    "a date in words",
    "sample",
    { "reading_times+0,4": "'16 Sept" },
    course,
    "look",
    /^The date of a reading is a text, so the reading counts for nothing/,
  ],
  ["a reading in words", "sample", { "readings+0,4": "'1,012" }, course, "look", /^A reading is a text, not a number/],
  ["a reading without its decimal sign", "sample", { "readings+0,4": 1012 }, course, "look", /write 1\.012 instead of 1012/],
  [
    "a reading in points or °P",
    "sample",
    { "readings+0,4": 12 },
    course,
    "look",
    /Degrees Plato want the scale P; of points, 12 are written 1\.012/,
  ],
  ["a reading of 50", "sample", { "readings+0,4": 50 }, course, "look", /^A reading is no gravity/],
  ["SG with the scale P", "sample", { "readings+1,4": "P" }, course, "look", /looks like specific gravity: set its scale to SG/],
  ["an error in a reading", "sample", { "readings+0,4": "=NA()" }, course, "look", /shows an error: type it again/],
  ["a blocked column of gravities", "sample", { "gravities+0,6": "mine" }, course, "look", /Columns F to H must hold nothing of your own/],
  ["a blocked column of alcohol", "sample", { "gravities+2,6": "mine" }, course, "look", /clear what is yours in columns G and H/],
  // Packaging.
  [
    "readings that cannot be judged, in the bottle",
    "sample",
    { "readings+0,4": "'1,012" },
    finished,
    "stop",
    /^Packaged, but no reading can be judged/,
  ],
  [
    "packaged too early",
    "sample",
    { "readings+0,4": "", "reading_times+0,4": "" },
    finished,
    "stop",
    /^Packaged before two readings a day apart agreed\./,
  ],
  [
    "kegged too early",
    "sample",
    { into: "keg", "readings+0,4": "", "reading_times+0,4": "" },
    finished,
    "stop",
    /^Kegged before two readings a day apart agreed\./,
  ],
  ["a packaging day in words", "sample", { packaged_on: "'19 Sept" }, finished, "stop", /^Packaged on is a text, not a date/],
  ["packaged before it was brewed", "sample", { packaged_on: 46200 }, finished, "stop", /^Packaged before it was brewed/],
  [
    "both bottles and keg",
    "sample",
    { into: "bottles and keg" },
    pressure,
    "stop",
    /^Choose bottles or keg: .* Some of each: a sheet for each part\.$/,
  ],
  ["neither bottles nor keg", "sample", { into: "" }, pressure, "stop", /^Choose bottles or keg/],
  ["carbonation without its decimal sign", "sample", { carbonation: 24 }, pressure, "stop", /Do not bottle on it\.$/],
  ["carbonation in words", "sample", { carbonation: "'2,4" }, pressure, "stop", /^Target carbonation: “2,4” is a text/],
  ["more carbonation than the bottle bears", "sample", { carbonation: 4 }, pressure, "stop", /^over: /],
  [
    "less carbonation than the beer holds",
    "sample",
    { carbonation: 0.6 },
    pressure,
    "stop",
    /already holds 0\.8\d volumes of CO2: to get 0\.6 no sugar is needed/,
  ],
  [
    "a bottle of no known kind",
    "sample",
    { bottle_kind: "jam jar" },
    pressure,
    "stop",
    /cannot be judged: look at the warmest place, the kind of bottle/,
  ],
  [
    "no kind of bottle, sugar calculated all the same",
    "sample",
    { bottle_kind: "" },
    pressure,
    "stop",
    /^Whether the bottle will hold the pressure is not known yet/,
  ],
  ["an oven for a cellar", "sample", { warmest_storage: 300 }, pressure, "stop", /Do not bottle on it\.$/],
  [
    "a sugar of no known kind",
    "sample",
    { priming_sugar: "treacle" },
    pressure,
    "stop",
    /^The sugar cannot be calculated: .* Do not guess it\.$/,
  ],
  ["a temperature of the beer in words", "sample", { warmest_beer: "cool" }, pressure, "stop", /^The sugar cannot be calculated/],
  ["no warmest temperature", "sample", { warmest_beer: "" }, pressure, "stop", /no sugar is calculated\.$/],
  [
    "another unit system",
    "sample",
    { units: "metric" },
    pressure,
    "stop",
    /“metric”, but this sheet was made in us: every figure on it is misread/,
  ],
  // The clock and the card.
  ["a brew day in words", "sample", { brewed_on: "'5 Sept" }, "Clock of the brew day", "look", /^Brewed on is a text, not a date/],
  ["an error in the brew day", "sample", { brewed_on: "=NA()" }, "Clock of the brew day", "look", /^Brewed on shows an error/],
  ["a beginning in words", "sample", { start_time: "'ten" }, "Clock of the brew day", "look", /^Day begins at is a text, not a time/],
  [
    "tap water warmer than the wort is to be",
    "sample",
    { tap_temperature: 75 },
    "Clock of the brew day",
    "look",
    /^Chilling to 66 °F cannot be calculated: is the tap water \(75 °F\) too warm for it\?/,
  ],
  [
    "a sanitiser bucket in words",
    "sample",
    { sanitiser_volume: "bucket" },
    "Clock of the brew day",
    "look",
    /^Sanitiser bucket: “bucket” is a text/,
  ],
  [
    "a blocked timeline",
    "sample",
    { "timeline+1,3": "mine" },
    "Clock of the brew day",
    "look",
    /^The clock cannot be made: click on Q\d+ and read why/,
  ],
  ["an altitude above every mountain", "sample", { altitude: 30000 }, "Figures", "look", /^At 30000 ft nobody brews/],
  [
    "a bottle in mL on a sheet in fl oz",
    "sample",
    { bottle_volume: 355 },
    "Figures",
    "look",
    /^A bottle of 355 fl oz\? That looks like mL/,
  ],
  [
    "more bottles than beer",
    "sample",
    { bottles_filled: 520 },
    "Figures",
    "look",
    /^More bottles filled \(520\) than the beer was enough for \(54\)/,
  ],
  ["bottles in words", "sample", { bottles_filled: "many" }, "Figures", "look", /“many” is a text/],
  [
    "a malt's colour in words",
    "sample",
    { "malt+3,0": "dark" },
    "Figures",
    "look",
    /^The card shows an error in: colour \(malt\); .*click on the cell and read why\.$/,
  ],
];

/** Rows of two lines on paper, by the plan. */
const twoLines = new Set<string>([
  "Volumes",
  "Room in the kettle",
  "Steeping",
  "Mash",
  "Hops",
  "Yeast",
  "Temperature of the beer",
  course,
  finished,
  "Clock of the brew day",
]);

describe.each(Object.keys(batches) as Which[])("something mistyped on the sheet %s is told in words", (sheetUnderTest) => {
  alone(sheetUnderTest);
  it.each(cases.filter(([, which]) => which === sheetUnderTest))("%s (%s)", async (_, which, typed, label, state, words) => {
    const { complaints, shown } = await saidWith(which, typed);
    const found = complaints.find((complaint) => complaint.label === label);
    expect(found?.text).toMatch(words);
    expect(found?.state).toBe(state);
    for (const { label: row, text } of complaints)
      if (twoLines.has(row)) expect(text.length, text).toBeLessThanOrEqual(2 * charactersOfALine);
    // No answer that is no number and no error, and nothing of the machine's.
    for (const cell of shown) expect(cell).not.toMatch(/NaN|Infinity|undefined|\[object/);
    expect(complaints.filter(({ text }) => text.startsWith("Cannot be checked"))).toEqual([]);
  });
});

it("something is mistyped for each check", () => {
  const { cells, names } = planBatch(sample);
  const [first = "", last = ""] = names.find(({ name }) => name === "check_states")?.range.split(":") ?? [];
  const labels = cells
    .filter(
      ({ address: cell }) => cell.startsWith("A") && position(cell).row >= position(first).row && position(cell).row <= position(last).row,
    )
    .map(({ content }) => content);
  expect(labels).toHaveLength(12);
  for (const label of labels) expect(cases.map(([, , , said]) => said)).toContain(label);
});

describe.each<[Which, readonly [string, Typed, number][]]>([
  [
    "part",
    [
      ["too high for the extract", { og_reading: 1.104, og_temperature: 60 }, 1.0493],
      ["too low for the extract", { og_reading: 1.032, og_temperature: 60 }, 1.0493],
    ],
  ],
  ["sample", [["no number at all", { og_reading: "ten fifty" }, 1.0511]]],
])("a reading that cannot be, on the sheet %s", (which, readings) => {
  alone(which);
  it.each(readings)("%s: the sheet goes on with what malt and volume give", async (_, typed, og) => {
    expect((await saidWith(which, typed)).og).toBeCloseTo(og, 3);
  });
});

describe("a reading of a mash", () => {
  alone("mashed");
  it("too high for all of the grain: the sheet goes on with what was planned", async () => {
    expect((await saidWith("mashed", { og_reading: 1.104, og_temperature: 60 })).og).toBeCloseTo(1.0476, 3);
  });
  it("may be more or less than planned", async () => {
    expect((await saidWith("mashed", { og_reading: 1.06, og_temperature: 60 })).og).toBeCloseTo(1.06, 3);
    expect((await saidWith("mashed", { og_reading: 1.03, og_temperature: 60 })).og).toBeCloseTo(1.03, 3);
  });
  it("with extract beside the grain: the extract's share is sure, less than that cannot be", async () => {
    // 3 lb of malt at 80 %, all of it 111 points·gal, and 6 lb of extract at 78 %, 216: over 5.2 US gal 1.0416 at the least, 1.0629 at the most.
    const noThird = { "malt+-1,2": "", "malt+0,2": "", "malt+1,2": "", "malt+2,2": "" };
    const partial: Typed = { malt: 3, "malt+0,1": 6, "malt+1,1": 78, "malt+2,1": "extract", ...noThird, og_temperature: 60 };
    const low = await saidWith("mashed", { ...partial, og_reading: 1.035 });
    expect(low.complaints.map(({ text }) => text)).toEqual([
      expect.stringMatching(
        /^Reading 1\.035 is less than the extract and sugar alone give\. Usual cause: not stirred, or a wrong volume\. Trust 1\.05[67]/,
      ),
    ]);
    const high = await saidWith("mashed", { ...partial, og_reading: 1.066 });
    expect(high.og).toBeCloseTo(1.0565, 3);
    const fine = await saidWith("mashed", { ...partial, og_reading: 1.058 });
    expect([fine.og, fine.complaints]).toEqual([expect.closeTo(1.058, 3), []]);
  });
});
