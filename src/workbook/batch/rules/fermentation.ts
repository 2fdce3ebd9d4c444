import { leaveThem } from "../../../functions/pack/check-words";
import type { UnitSystem } from "../../../functions/quantities";
import type { ReadingRows } from "../sheet/readings";
import type { UnitWords } from "../unit-words";
import { anyError, anyWords, firstOf, isWords, shareOfOne, text, unusable, type Case } from "./words";

/** Without an attenuation a fermentation that stopped too early passes for a finished one. */
export const yeastMessage: string = firstOf([
  ...unusable("packs_in_hand", "Packs in hand"),
  ...unusable("cells_per_pack", "Cells in one pack"),
  ...unusable("viability", "Still alive"),
  ...unusable("pitch_rate", "Pitching rate"),
  ...unusable("attenuation", "Sugar it should eat"),
  ...(["viability", "attenuation"] as const).flatMap((name): Case[] => {
    const label = name === "viability" ? "Still alive" : "Sugar it should eat";
    return [[`N(${name})>100`, `"${label}: "&${name}&" %? More than all of it cannot be."`], shareOfOne(name, label)];
  }),
  [
    "AND(COUNT(readings)>0,N(attenuation)=0)",
    text("How much of the sugar should it eat? Without that nobody sees whether it stopped too early."),
  ],
  ["ISERROR(packs_to_pitch)", text("The packs cannot be reckoned: look at volume, malt and the figures of the yeast.")],
  ['OR(packs_in_hand="",packs_to_pitch="")', '""'],
  ["packs_in_hand<packs_to_pitch", '"Too little yeast: "&packs_to_pitch&" packs wanted, "&packs_in_hand&" in hand."'],
]);

/** Pitching warmer than this harms ale yeast or what it makes (common practice). */
const warmestPitch: Readonly<Record<UnitSystem, number>> = { us: 80, metric: 27 };
/** Colder than any beer that still ferments, in °F: such figures are °C (our judgement). */
const coldBeerF = 40;

export function temperatureMessage(units: UnitSystem, words: UnitWords): string {
  const asked = units === "us" ? `IF(MIN(beer_temperatures)<${coldBeerF}," Is that °C?","")` : '""';
  return firstOf([
    ...unusable("pitch_temperature", "Pitch at", "allowed"),
    ...unusable("ferment_from", "Ferments from", "allowed"),
    ...unusable("ferment_to", "Ferments to", "allowed"),
    ['pitch_temperature=""', text("Pitch at: no temperature yet, so the clock does not know how far to chill.")],
    [
      `pitch_temperature>${warmestPitch[units]}`,
      `"Pitching at "&pitch_temperature&" ${words.temperature} harms the yeast: chill below ${warmestPitch[units]} ${words.temperature}."`,
    ],
    [
      "AND(N(ferment_from)>0,N(ferment_to)>0,N(ferment_from)>N(ferment_to))",
      text("The yeast's lowest temperature is above its highest: are the two exchanged?"),
    ],
    [anyWords("beer_temperatures"), text("A temperature of the beer is a text, not a number, so it counts for nothing.")],
    ["COUNT(beer_temperatures)=0", '""'],
    [
      "AND(N(ferment_to)>0,MAX(beer_temperatures)>ferment_to+2)",
      `"It has been at "&TEXT(MAX(beer_temperatures),"0")&" ${words.temperature}: too warm for this yeast, it will taste of it."${units === "metric" ? '&IF(MAX(beer_temperatures)>45," Is that °F?","")' : ""}`,
    ],
    [
      "AND(N(ferment_from)>0,MIN(beer_temperatures)<ferment_from-2)",
      `"It has been at "&TEXT(MIN(beer_temperatures),"0")&" ${words.temperature}: so cold the yeast may stop."&${asked}`,
    ],
  ]);
}

/** Readings that count for nothing, or for the wrong day, before what they say is judged. */
export function courseMessage({ first, last }: ReadingRows): string {
  const scales = `C${first}:C${last}`;
  return firstOf([
    ["SUMPRODUCT(ISERROR(reading_times)+ISERROR(readings))>0", text("A reading or its date shows an error: type it again.")],
    [
      anyWords("reading_times"),
      text("The date of a reading is a text, so the reading counts for nothing. Type it such as 2026-09-08 18:30."),
    ],
    [anyWords("readings"), text("A reading is a text, not a number. Type the number alone, with the decimal sign of your Excel.")],
    [
      `COUNTIFS(${scales},"<>P",readings,">1.2",readings,"<=40")>0`,
      text("A reading is no specific gravity. Degrees Plato want the scale P; of points, 12 are written 1.012."),
    ],
    [`COUNTIFS(${scales},"<>P",readings,">40",readings,"<900")>0`, text("A reading is no gravity: write 1.012 for 12 points.")],
    [`COUNTIFS(${scales},"<>P",readings,">=900")>0`, text("A reading has no decimal sign: write 1.012 instead of 1012.")],
    [
      `COUNTIFS(${scales},"P",readings,">=0.97",readings,"<=1.2")>0`,
      text("A reading of about 1 °P looks like specific gravity: set its scale to SG."),
    ],
    [
      "COUNT(readings)>SUMPRODUCT(ISNUMBER(readings)*ISNUMBER(reading_times))",
      text("A reading has no date and time, so it counts for nothing."),
    ],
    [
      'IF(ISNUMBER(brewed_on),COUNTIFS(reading_times,">0",reading_times,"<"&INT(brewed_on))>0,FALSE)',
      text("A reading is dated before the brew day: is a date mistyped?"),
    ],
    [
      `SUMPRODUCT(ISNUMBER(A${first}:A${last - 1})*ISNUMBER(A${first + 1}:A${last})*(A${first + 1}:A${last}<A${first}:A${last - 1}))>0`,
      text("A reading is dated before the one above it: is a date mistyped? The latest date counts as the newest reading."),
    ],
    [
      anyError("gravities"),
      text(`A reading cannot be corrected: look at its temperature. Columns F to H must hold nothing of your own (F${first} says why).`),
    ],
    [
      "ISERROR(verdict)",
      text("Where it stands cannot be reckoned: mend first the original gravity, or how much of the sugar it should eat."),
    ],
    // Without a reading a plan that shows an error is told by the line of the malt, not here.
    ["COUNT(readings)=0", '""'],
    ['verdict="rising"', text("Gravity rose between two readings, which beer cannot do: check scale, temperature and date.")],
    ['AND(fg<>"",N(fg)>N(og))', text("Gravity now is above the original gravity: one of the two is wrong.")],
    [
      anyError(`G${first}:H${last}`),
      text("What is eaten and the alcohol cannot be reckoned: clear what is yours in columns G and H; look at the original gravity."),
    ],
  ]);
}

/** Beer in glass or in a keg before its readings agreed may go on fermenting there. */
export const finishedMessage: string = firstOf([
  ["ISERROR(packaged_on)", text("Packaged on shows an error: type the date.")],
  [isWords("packaged_on"), text("Packaged on is a text, not a date. Type it such as 2026-09-19.")],
  [
    "ISERROR(verdict)",
    `IF(N(packaged_on)>0,"Packaged, but no reading can be judged: mend them. Bottles: ${leaveThem}","Cannot be checked: mend the readings first.")`,
  ],
  ["ISERROR(dry_hopped_on)", text("Dry hops went in on shows an error: type the date.")],
  [
    isWords("dry_hopped_on"),
    text("Dry hops went in on is a text, not a date, so readings from before them still count. Type it such as 2026-09-12."),
  ],
  [
    'verdict="stalled"',
    '"Stopped well above "&IF(N(fg_expected)>0,"the expected "&FIXED(fg_expected,3,TRUE),"where beer ends")&". Do not bottle: what is left may ferment in the glass."',
  ],
  [
    "IF(AND(ISNUMBER(packaged_on),ISNUMBER(brewed_on)),AND(packaged_on>0,packaged_on<INT(brewed_on)),FALSE)",
    text("Packaged before it was brewed: is a date mistyped?"),
  ],
  [
    'AND(N(packaged_on)>0,verdict<>"steady",N(count_from)>0,into<>"keg")',
    text(`Packaged before readings agreed after the dry hops. The bottles: ${leaveThem}`),
  ],
  [
    'AND(N(packaged_on)>0,verdict<>"steady",into="keg")',
    text("Kegged before two readings a day apart agreed. Keep it cold, watch the pressure, and let some off."),
  ],
  ['AND(N(packaged_on)>0,verdict<>"steady")', text(`Packaged before two readings a day apart agreed. The bottles: ${leaveThem}`)],
]);
