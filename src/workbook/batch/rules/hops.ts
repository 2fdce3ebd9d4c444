import { packetAlphaPercent } from "../../../core/hops/alpha";
import { hopPlaces } from "../contents";
import { rule, type CheckLine } from "./rule";
import { anyError, unusable, unusableIn } from "./words";

/** Hops that say a place instead of minutes. */
const placed = `(${hopPlaces.map((place) => `COUNTIF(hop_minutes,"${place}")`).join("+")})`;

/** Cells with letters that are none of the places. */
const otherWords = (column: string): string =>
  `SUMPRODUCT(ISTEXT(${column})*(${column}<>"")${hopPlaces.map((place) => `*(${column}<>"${place}")`).join("")})`;

/** @param shares cell of the first hop's bitterness, which spills down its column */
export const hopsLine = (shares: string): CheckLine => ({
  id: "hops",
  label: "Hops",
  weight: "look",
  steps: [
    ...unusableIn("mass", "INDEX(hops,0,1)", "Mass of a hop"),
    ...unusableIn("alpha", "hop_alpha", "Alpha acid of a hop"),
    rule("minutes-error", anyError("hop_minutes"), "Minutes left of a hop: a cell shows an error.", "Type the number."),
    rule(
      "minutes-words",
      `${otherWords("hop_minutes")}>0`,
      "Minutes left of a hop:",
      "type the minutes, 0 for flame-out, or first wort, stand or dry.",
    ),
    rule("minutes-negative", "MIN(hop_minutes)<0", "Minutes left of a hop: less than nothing cannot be."),
    rule(
      "alpha-too-high",
      `MAX(hop_alpha)>${packetAlphaPercent.most}`,
      '"An alpha acid of "&MAX(hop_alpha)&" %? No hop has so much:"',
      "is a decimal point missing?",
    ),
    rule(
      "alpha-share-of-one",
      `COUNTIFS(hop_alpha,">0",hop_alpha,"<"&${packetAlphaPercent.least})>0`,
      `"An alpha acid below ${packetAlphaPercent.least} %?"`,
      '"Type it as on the packet: 5 for 5 %, not 0.05."',
    ),
    rule("longer-than-boil", "MAX(hop_minutes)>N(boil_minutes)", "A hop is to boil longer than the boil lasts."),
    rule(
      "first-wort-without-boil",
      'AND(COUNTIF(hop_minutes,"first wort")>0,N(boil_minutes)=0)',
      "A hop at first wort counts by the boil, and there is none: until then the bitterness stays empty.",
    ),
    ...unusable("stand_temperature", "Hop stand (column L)", "allowed"),
    ...unusable("stand_minutes", "The stand lasts (column L)"),
    rule(
      "stand-unfinished",
      'AND(COUNTIF(hop_minutes,"stand")>0,OR(N(stand_temperature)=0,N(stand_minutes)=0))',
      '"A hop is to stand, but the stand lacks its temperature or minutes (column L): until then the bitterness stays empty."',
    ),
    rule(
      "stand-too-hot",
      "IF(ISNUMBER(boils_at),N(stand_temperature)>boils_at,FALSE)",
      '"A stand at "&stand_temperature&" is hotter than the boil ("&TEXT(boils_at,"0")&"):"',
      "type what the wort has cooled to.",
    ),
    rule(
      "unfinished",
      `OR(COUNT(hop_alpha)<>COUNT(hop_minutes)+${placed},COUNT(hops)+${placed}<>3*COUNT(hop_alpha))`,
      "A hop lacks its mass, alpha acid or minutes: until then the bitterness stays empty.",
    ),
    rule(
      "shares-error",
      `AND(COUNT(hop_alpha)>0,ISERROR(${shares}))`,
      "The bitterness cannot be calculated:",
      `click on ${shares} and read why. Its column must be empty below.`,
    ),
    rule(
      "none",
      "AND(ISNUMBER(og_reading),COUNT(hop_alpha)=0)",
      "Brewed without hops? Then there is no bitterness, and little that keeps souring bacteria down.",
    ),
  ],
});
