import type { UnitSystem } from "../../../functions/quantities";
import type { Method } from "../contents";
import type { BlockKey } from "../fields/blocks";
import { boilingRoomFormula, heatingRoomFormula, mashRoomFormula, steepRoomFormula } from "../sheet/room";
import type { UnitWords } from "../unit-words";
import { rule, silent, type CheckLine, type Rule } from "./rule";
import { text, unusable } from "./words";

/** What does not fit, how much it is and what holds how much. */
const tooFull = (what: string, room: string, vessel: string, holds: string, words: UnitWords): string =>
  `"${what} will not fit: "&FIXED(${room},2,TRUE)&" ${words.volume} hot, the ${vessel} holds "&FIXED(${holds},2,TRUE)&"."`;

/** The kettle, and the mash tun where there is one, at their fullest: while water is heated, in the mash or steep, and as the wort comes to the boil. */
export function roomLine(units: UnitSystem, words: UnitWords, method: Method, blocks: readonly BlockKey[]): CheckLine {
  const inTun = "AND(N(tun_size)>0,N(mash_water)>0)";
  const [mash, steep] = [mashRoomFormula(units, blocks.includes("mashRunOff") ? "mash_full" : "mash_water"), steepRoomFormula(units)];
  const tun: Rule[] = [
    ...unusable("tun_size", "Mash tun holds"),
    rule(
      "tun-too-small",
      `IF(${inTun},${mash}>tun_size,FALSE)`,
      tooFull("The mash", mash, "mash tun", "tun_size", words),
      "Make it thicker, or mash in two.",
    ),
  ];
  const soaked: Rule[] =
    method === "extract"
      ? [
          rule(
            "steep-too-full",
            `AND(grain_mass>0,${steep}>kettle_size)`,
            tooFull("Water and grain bag", steep, "kettle", "kettle_size", words),
            "Steep in part of the water.",
          ),
        ]
      : [
          rule(
            "mash-too-full",
            `IF(N(mash_water)>0,AND(N(tun_size)=0,${mash}>kettle_size),FALSE)`,
            tooFull("The mash", mash, "kettle", "kettle_size", words),
            "Make it thicker, or mash in two.",
          ),
          rule(
            "heating-too-full",
            `IF(${inTun},${heatingRoomFormula}>kettle_size,FALSE)`,
            tooFull("The water for the mash", heatingRoomFormula, "kettle", "kettle_size", words),
            "Heat it in two.",
          ),
        ];
  return {
    id: "room",
    label: "Room in the kettle",
    weight: "stop",
    steps: [
      ...unusable("kettle_size", "Kettle holds"),
      ...(method === "extract" ? [] : tun),
      silent("unknown", 'OR(water_before_boil="",N(kettle_size)=0)'),
      rule(
        "boil-too-full",
        `${boilingRoomFormula}>kettle_size`,
        `"Will not fit: it needs "&FIXED(${boilingRoomFormula},2,TRUE)&" ${words.volume} hot, the kettle holds "&FIXED(kettle_size,2,TRUE)&"."`,
        "Boil less, top up in the fermenter.",
      ),
      ...soaked,
      rule(
        "boils-over",
        `${boilingRoomFormula}>0.9*kettle_size`,
        text("Less than a tenth of the kettle is free: it will boil over unless you stand by it."),
      ),
      ...(method === "extract"
        ? []
        : [
            rule(
              "tun-nearly-full",
              `IF(${inTun},${mash}>0.9*tun_size,FALSE)`,
              `"Less than a tenth of the mash tun is free: the mash takes "&FIXED(${mash},2,TRUE)&" ${words.volume}, the tun holds "&FIXED(tun_size,2,TRUE)&"."`,
              "It slops over and scalds as you stir: make it thicker.",
            ),
          ]),
    ],
  };
}
