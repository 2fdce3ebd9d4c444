import type { UnitSystem } from "../../../functions/quantities";
import { hopPlaces, type Method } from "../contents";
import { boilingRoomFormula, heatingRoomFormula, mashRoomFormula, steepRoomFormula } from "../sheet/room";
import type { UnitWords } from "../unit-words";
import { anyError, firstOf, text, unusable, unusableIn, type Case } from "./words";

/** A volume of more than this is a slip, or a brewery (our judgement). */
const largestVolume = 10000;

/** @param budget first cell of the water budget's workings */
export function volumesMessage(words: UnitWords, budget: string): string {
  return firstOf([
    ...unusable("volume", "Into the fermenter"),
    ["N(volume)=0", text("Into the fermenter: no volume yet.")],
    [
      `volume>${largestVolume}`,
      `${text("Into the fermenter: ")}&volume&${text(` ${words.volume} is more than this sheet can reckon with. Is a decimal sign missing?`)}`,
    ],
    ...unusable("top_up", "Top-up water"),
    ["N(top_up)>=volume", text("Top-up water is as much as the whole batch: nothing is left to boil.")],
    ...unusable("boil_minutes", "Boil"),
    ...unusable("boil_off", "Boils away"),
    ...unusable("kettle_loss", "Left behind in the kettle"),
    ...unusable("absorption", "Water that the grain keeps"),
    ...unusable("tun_dead_space", "Dead space of the mash tun"),
    ["N(boil_off)>N(kettle_part)", text("More than the whole kettle would boil away in an hour: look at “Boils away”.")],
    [
      `AND(ISERROR(${budget}),ISERROR(og_plan))`,
      text("The water cannot be reckoned: look at the malt table; what dissolves needs no water."),
    ],
    [
      `ISERROR(${budget})`,
      text(`The water cannot be reckoned: click on ${budget} and read why. Its answer needs the cells below and beside it empty.`),
    ],
    ...unusable("volume_reached", "Volume in the fermenter"),
    [
      "AND(N(volume_reached)>0,ABS(N(volume_reached)-volume)>volume/4)",
      `"In the fermenter are "&volume_reached&", planned were "&volume&" ${words.volume}: measured, or a slip? Gravity, sugar and bottles go by it."`,
    ],
    ...unusable("bottling_loss", "Lost in racking"),
    ["N(bottling_loss)>=beer_volume", text("Lost in racking is as much as the whole batch: nothing is left to fill.")],
  ]);
}

/** What does not fit, how much it is and what holds how much. */
const tooFull = (what: string, room: string, vessel: string, holds: string, remedy: string, words: UnitWords): string =>
  `"${what} will not fit: "&FIXED(${room},1,TRUE)&" ${words.volume} hot, the ${vessel} holds "&FIXED(${holds},1,TRUE)&". ${remedy}"`;

/** The kettle, and the mash tun where there is one, at their fullest: while water is heated, in the mash or steep, and as the wort comes to the boil. */
export function roomMessage(units: UnitSystem, words: UnitWords, method: Method): string {
  const inTun = "AND(N(tun_size)>0,N(mash_water)>0)";
  const [mash, steep] = [mashRoomFormula(units), steepRoomFormula(units)];
  const tun: Case[] = [
    ...unusable("tun_size", "Mash tun holds"),
    [`IF(${inTun},${mash}>tun_size,FALSE)`, tooFull("The mash", mash, "mash tun", "tun_size", "Make it thicker, or mash in two.", words)],
  ];
  const soaked: Case[] =
    method === "extract"
      ? [
          [
            `AND(grain_mass>0,${steep}>kettle_size)`,
            tooFull("Water and grain bag", steep, "kettle", "kettle_size", "Steep in part of the water.", words),
          ],
        ]
      : [
          [
            `IF(N(mash_water)>0,AND(N(tun_size)=0,${mash}>kettle_size),FALSE)`,
            tooFull("The mash", mash, "kettle", "kettle_size", "Make it thicker, or mash in two.", words),
          ],
          [
            `IF(${inTun},${heatingRoomFormula}>kettle_size,FALSE)`,
            tooFull("The water for the mash", heatingRoomFormula, "kettle", "kettle_size", "Heat it in two.", words),
          ],
        ];
  return firstOf([
    ...unusable("kettle_size", "Kettle holds"),
    ...(method === "extract" ? [] : tun),
    ['OR(water_before_boil="",N(kettle_size)=0)', '""'],
    [
      `${boilingRoomFormula}>kettle_size`,
      `"Will not fit: it needs "&FIXED(${boilingRoomFormula},1,TRUE)&" ${words.volume} hot, the kettle holds "&FIXED(kettle_size,1,TRUE)&". Boil less, top up in the fermenter."`,
    ],
    ...soaked,
    [`${boilingRoomFormula}>0.9*kettle_size`, text("Less than a tenth of the kettle is free: it will boil over unless you stand by it.")],
  ]);
}

const grainUnknown = text("The grain cannot be reckoned: look at the malt table.");

/** Warmer than hand-warm, cooler than what draws tannin out of the husks: beyond them it is the other scale, or a slip (the upper ends common practice, the lower ones our judgement). */
const steepLimits: Readonly<Record<UnitSystem, readonly [lowest: number, highest: number]>> = { us: [100, 170], metric: [38, 77] };

export function steepingMessage(units: UnitSystem, words: UnitWords): string {
  const [lowest, highest] = steepLimits[units];
  return firstOf([
    ...unusable("soak_temperature", "Steep at", "allowed"),
    ...unusable("soak_minutes", "Steep for"),
    ["ISERROR(grain_mass)", grainUnknown],
    [`N(soak_temperature)>${highest}`, text(`Steeping above ${highest} ${words.temperature} draws harsh taste out of the husks.`)],
    [
      `AND(grain_mass>0,N(soak_temperature)>0,N(soak_temperature)<${lowest})`,
      `"Steeping at "&soak_temperature&" ${words.temperature} draws next to nothing out of the grain."${units === "us" ? '&" Is that °C?"' : ""}`,
    ],
    ["AND(grain_mass>0,N(soak_minutes)>45)", text("Steeped longer than needed: half an hour does.")],
  ]);
}

/** Below and above these the enzymes of the mash hardly work, or not for long (textbook knowledge; the limits from memory). */
const mashLimits: Readonly<Record<UnitSystem, readonly [lowest: number, highest: number]>> = { us: [140, 162], metric: [60, 72] };

export function mashMessage(units: UnitSystem, words: UnitWords): string {
  const [lowest, highest] = mashLimits[units];
  return firstOf([
    ...unusable("soak_temperature", "Mash at", "allowed"),
    ...unusable("soak_minutes", "Mash for"),
    ...unusable("mash_thickness", "Water to grain in the mash"),
    ...unusable("grain_temperature", "Grain stands at", "allowed"),
    ["ISERROR(grain_mass)", grainUnknown],
    ["grain_mass=0", '""'],
    [
      `AND(N(soak_temperature)>0,OR(soak_temperature<${lowest},soak_temperature>${highest}))`,
      `"A mash at "&TEXT(soak_temperature,"0")&" ${words.temperature} hardly turns starch into sugar."`,
    ],
    [
      "OR(ISERROR(mash_water),ISERROR(strike_temperature))",
      text("The water to strike with cannot be reckoned: look at the grain's mass, its temperature and the water to grain."),
    ],
    [
      'AND(water_collect<>"",N(mash_water)>N(water_collect))',
      text("The mash alone takes more water than the batch needs: make it thicker."),
    ],
  ]);
}

/** Hops that say a place instead of minutes. */
const placed = `(${hopPlaces.map((place) => `COUNTIF(hop_minutes,"${place}")`).join("+")})`;

/** Cells with letters that are none of the places. */
const otherWords = (column: string): string =>
  `SUMPRODUCT(ISTEXT(${column})*(${column}<>"")${hopPlaces.map((place) => `*(${column}<>"${place}")`).join("")})`;

/** @param shares cell of the first hop's bitterness, which spills down its column */
export const hopsMessage = (shares: string): string =>
  firstOf([
    ...unusableIn("INDEX(hops,0,1)", "Mass of a hop"),
    ...unusableIn("hop_alpha", "Alpha acid of a hop"),
    [anyError("hop_minutes"), text("Minutes left of a hop: a cell shows an error. Type the number.")],
    [`${otherWords("hop_minutes")}>0`, text("Minutes left of a hop: type the minutes, 0 for flame-out, or first wort, stand or dry.")],
    ["MIN(hop_minutes)<0", text("Minutes left of a hop: less than nothing cannot be.")],
    ["MAX(hop_alpha)>25", '"An alpha acid of "&MAX(hop_alpha)&" %? No hop has so much: is a decimal point missing?"'],
    ['COUNTIFS(hop_alpha,">0",hop_alpha,"<0.3")>0', text("An alpha acid below 0.3 %? Type it as on the packet: 5 for 5 %, not 0.05.")],
    ["MAX(hop_minutes)>N(boil_minutes)", text("A hop is to boil longer than the boil lasts.")],
    [
      'AND(COUNTIF(hop_minutes,"first wort")>0,N(boil_minutes)=0)',
      text("A hop at first wort counts by the boil, and there is none: until then the bitterness stays empty."),
    ],
    ...unusable("stand_temperature", "Hop stand (column L)", "allowed"),
    ...unusable("stand_minutes", "The stand lasts (column L)"),
    [
      'AND(COUNTIF(hop_minutes,"stand")>0,OR(N(stand_temperature)=0,N(stand_minutes)=0))',
      text("A hop is to stand, but the stand lacks its temperature or minutes (column L): until then the bitterness stays empty."),
    ],
    [
      "IF(ISNUMBER(boils_at),N(stand_temperature)>boils_at,FALSE)",
      '"A stand at "&stand_temperature&" is hotter than the boil ("&TEXT(boils_at,"0")&"): type what the wort has cooled to."',
    ],
    [
      `OR(COUNT(hop_alpha)<>COUNT(hop_minutes)+${placed},COUNT(hops)+${placed}<>3*COUNT(hop_alpha))`,
      text("A hop lacks its mass, alpha acid or minutes: until then the bitterness stays empty."),
    ],
    [
      `AND(COUNT(hop_alpha)>0,ISERROR(${shares}))`,
      text(`The bitterness cannot be reckoned: click on ${shares} and read why. Its column must be empty below.`),
    ],
    [
      "AND(ISNUMBER(og_reading),COUNT(hop_alpha)=0)",
      text("Brewed without hops? Then there is no bitterness, and little that keeps souring bacteria down."),
    ],
  ]);
