import { fieldRows } from "../fields";
import { quantity } from "../../../../functions/quantities";
import { unlessInParts } from "../parts";
import { cautionsBelow, type Block } from "./block";

const cautions = [
  "Never above the pressure on the plate. Let the pressure off before you open anything; gas bottle upright and tied.",
  "CO2 suffocates: air the room, most of all a cellar or a cupboard. Line and keg equally cold, or it foams.",
] as const;

/** How much beer goes into kegs and under which gas: section 8 says it, or the first part that goes into one. */
const goesInto = (hasParts: boolean) => {
  const ofFirst = (row: string): string => `INDEX(${row},1,MATCH("keg",parts_into,0))`;
  const either = (whole: string, ofParts: string): string => unlessInParts(hasParts, whole, ofParts);
  return {
    /** Blank where no keg is filled, or any of these holds. */
    unless: (any: readonly string[], formula: string): string =>
      hasParts
        ? `=IF(${either('into<>"keg"', "parts_for_kegs=0")},"",IF(OR(${any.join(",")}),"",${formula}))`
        : `=IF(OR(into<>"keg",${any.join(",")}),"",${formula})`,
    volume: either("beer_volume-N(bottling_loss)", "parts_for_kegs"),
    carbonation: either("carbonation", ofFirst("parts_carbonation")),
    temperature: either("keg_temperature", ofFirst("parts_place")),
    isKeg: either('into="keg"', "parts_for_kegs>0"),
    /** Which keg is meant, where several parts go into one: a formula's tail for a unit. */
    whose: hasParts ? `&IF(COUNTIF(parts_into,"keg")>1,"; for part "&MATCH("keg",parts_into,0)&" only","")` : "",
  };
};

/** How many kegs, and a line that balances their pressure. */
export const kegLine: Block = {
  put(b, { units, partsOfWort }, { kegLine: lines }) {
    if (!lines) return;
    const keg = goesInto(partsOfWort !== undefined);
    fieldRows(
      b,
      [lines.holds, lines.plate, lines.filled, lines.diameter, lines.height, lines.flow],
      [
        [
          "Kegs to prepare",
          {
            content: keg.unless(
              ["N(keg_holds)<=0", partsOfWort ? `${keg.volume}<=0` : "N(beer_volume)-N(bottling_loss)<=0"],
              `ROUNDUP((${keg.volume})/keg_holds-0.0001,0)`,
            ),
            format: "whole",
            name: "kegs_ready",
          },
        ],
        [
          "Close it at a gravity of",
          {
            content: keg.unless(
              ["N(keg_plate)<=0", "N(fg)=0", `N(${keg.carbonation})<=0`, "NOT(ISNUMBER(ferment_to))", 'verdict="steady"'],
              `GYLE.PACK.SPUND(fg,fg_expected,${keg.carbonation},ferment_to,keg_plate,,altitude,units)`,
            ),
            format: "gravity",
            unit: `="with a relief valve, for its own gas"${keg.whose}`,
            name: "spund_at",
            note: "Only in a vessel made for pressure, with its plate's pressure typed here and a relief valve that works. The warmest of the fermentation counts.",
          },
        ],
        [
          "Length of the line",
          {
            // By the pressure itself: behind its judgement the chain of calls would grow too long, and a length hurts nobody.
            content: keg.unless(
              [`N(${keg.carbonation})<=0`, `NOT(ISNUMBER(${keg.temperature}))`],
              `GYLE.PACK.LINE(GYLE.PACK.PRESSURE(${keg.carbonation},${keg.temperature},units,altitude),line_height,line_diameter,line_flow,units)`,
            ),
            format: "one",
            unit: `="${quantity("length").unit[units]}"&IF(${keg.isKeg},""," once section 8 says keg")${keg.whose}`,
            name: "line_length",
            style: "keyResult",
          },
        ],
      ],
    );
    cautionsBelow(b, cautions);
  },
  beside({ partsOfWort }) {
    const keg = goesInto(partsOfWort !== undefined);
    return [
      [
        "Planned: close it at a gravity of",
        {
          // From the plan alone: the clock speaks of it, and what is read later goes by the clock.
          content: keg.unless(
            ["N(keg_plate)<=0", "N(og_plan)=0", "N(fg_plan)=0", `N(${keg.carbonation})<=0`, "NOT(ISNUMBER(ferment_to))"],
            `GYLE.PACK.SPUND(og_plan,fg_plan,${keg.carbonation},ferment_to,keg_plate,,altitude,units)`,
          ),
          format: "gravity",
          name: "spund_planned",
        },
      ],
    ];
  },
};
