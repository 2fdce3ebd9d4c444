import { fieldRows } from "../fields";
import { quantity } from "../../../../functions/quantities";
import { cautionsBelow, type Block } from "./block";

const cautions = [
  "Never above the pressure on the plate. Let the pressure off before you open anything; gas bottle upright and tied.",
  "CO2 suffocates: air the room, most of all a cellar or a cupboard. Line and keg equally cold, or it foams.",
] as const;

/** How many kegs, and a line that balances their pressure. */
export const kegLine: Block = {
  put(b, { units }, { kegLine: lines }) {
    if (!lines) return;
    fieldRows(
      b,
      [lines.holds, lines.plate, lines.filled, lines.diameter, lines.height, lines.flow],
      [
        [
          "Kegs to prepare",
          {
            content:
              '=IF(OR(into<>"keg",N(keg_holds)<=0,N(beer_volume)-N(bottling_loss)<=0),"",ROUNDUP((beer_volume-N(bottling_loss))/keg_holds-0.0001,0))',
            format: "whole",
            name: "kegs_ready",
          },
        ],
        [
          "Close it at a gravity of",
          {
            content:
              '=IF(OR(into<>"keg",N(keg_plate)<=0,N(fg)=0,N(carbonation)<=0,NOT(ISNUMBER(ferment_to)),verdict="steady"),"",GYLE.PACK.SPUND(fg,fg_expected,carbonation,ferment_to,keg_plate,,altitude,units))',
            format: "gravity",
            unit: "to carbonate itself, under a relief valve",
            name: "spund_at",
            note: "Only in a vessel made for pressure, with its plate's pressure typed here and a relief valve that works. The warmest of the fermentation counts.",
          },
        ],
        [
          "Length of the line",
          {
            // By the pressure itself: behind its judgement the chain of calls would grow too long, and a length hurts nobody.
            content:
              '=IF(OR(into<>"keg",N(carbonation)<=0,NOT(ISNUMBER(keg_temperature))),"",GYLE.PACK.LINE(GYLE.PACK.PRESSURE(carbonation,keg_temperature,units,altitude),line_height,line_diameter,line_flow,units))',
            format: "one",
            unit: `="${quantity("length").unit[units]}"&IF(into="keg",""," once section 8 says keg")`,
            name: "line_length",
            style: "keyResult",
          },
        ],
      ],
    );
    cautionsBelow(b, cautions);
  },
};
