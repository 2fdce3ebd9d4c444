import { quantity } from "../../../../functions/quantities";
import { fieldRows } from "../fields";
import { cautionsBelow, type Block } from "./block";

/** Days before the brew day on which a starter is made: a day to grow, a day to settle in the cold (common practice). */
const daysBefore = 2;

/** Room that a kilogram of dry extract takes up in wort, L (see GYLE.WORT.ENRICH). */
const extractLPerKg = 0.65;

const cautions = [
  "Boil its wort, cool it, sanitise all that touches it. Hot wort scalds; not all glass bears a flame.",
  "Never close it tight: gas must get out. Foil over the mouth, and a vessel with room for foam.",
] as const;

/** How much wort grows the yeast at hand to what the batch wants. */
export const starter: Block = {
  put(b, { units }, { starter: lines }, words) {
    if (!lines) return;
    const room = quantity("absorption").fromCore(extractLPerKg, units).toFixed(4);
    fieldRows(
      b,
      [lines.packs, lines.culture, lines.gravity, lines.extractName, lines.vessel, lines.madeOn],
      [
        [
          "Living cells that go in",
          {
            content: '=IF(OR(N(starter_packs)<=0,N(cells_per_pack)<=0),"",starter_packs*cells_per_pack*IF(viability="",100,viability)/100)',
            format: "whole",
            unit: "billion (10⁹)",
            name: "starter_cells",
          },
        ],
        [
          "Wort for the starter",
          {
            content:
              '=IF(OR(starter_cells="",cells_wanted=""),"",GYLE.YEAST.STARTER(starter_cells,cells_wanted,starter_gravity,units,starter_culture))',
            format: "two",
            unit: words.volume,
            name: "starter_volume",
            style: "keyResult",
          },
        ],
        [
          "Extract in it",
          {
            // So much added to water makes more than the wort asked for, by the room that it takes.
            content: `=IF(starter_volume="","",IF(starter_volume=0,0,starter_volume/(starter_volume/GYLE.WORT.ENRICH(starter_volume,1,starter_gravity,,units)+${room})))`,
            format: "two",
            unit: words.mass,
            name: "starter_extract",
            style: "keyResult",
          },
        ],
        [
          "Make it by",
          {
            content: `=IF(N(brewed_on)=0,"",brewed_on-${daysBefore})`,
            format: "date",
            unit: "a day to grow, a day to settle",
            name: "starter_by",
          },
        ],
      ],
    );
    cautionsBelow(b, cautions);
  },
};
