import { cardFigures, type CardFigure } from "../figures/card-figures";
import type { BatchContents } from "../contents";
import type { SheetLine } from "../derived/sheet-lines";
import { planVersion } from "../describe/plan-version";
import { leftField, section, workings, type BatchBuilder, type BatchLines, type Field } from "./fields";
import { unlessInParts } from "./parts";
import { bitternessFormula, modelOf } from "./hops";
import type { UnitWords } from "../unit-words";

/** Priming adds to the alcohol that the readings tell of, unless its sugar is withheld. Asked here, the chain of calls stays short. */
const inTheBottle = 'IF(OR(abv_bottle="",NOT(ISNUMBER(sugar_mass))),"","; with the priming "&FIXED(abv_bottle,1,TRUE))';

/** With how far the figure can be trusted when both readings are good to ±0.002, the usual hydrometer (common practice). */
const alcoholUnit = `=IF(N(abv_reached)=0,"${cardFigures.alcohol.unit}","${cardFigures.alcohol.unit}, ± "&FIXED(abv_spread,1,TRUE)&${inTheBottle})`;

/** By the newest reading, finished or not: the card shows them once the readings are at rest, and a chain of calls stays short. */
const byNewestReading = (words: UnitWords): readonly [string, Field][] => [
  ["Alcohol at the newest reading", { content: '=IF(fg="","",GYLE.BEER.ABV(og,fg))', format: "one", unit: "% by volume", name: "abv_now" }],
  [
    "give or take",
    {
      content: '=IF(fg="","",GYLE.GAUGE.SPREAD("BEER.ABV",CHOOSE({1,2},og,fg),{0.002,0.002}))',
      format: "one",
      unit: "% by volume",
      name: "abv_spread",
    },
  ],
  [
    "Energy of a bottle of it",
    {
      content: '=IF(fg="","",GYLE.BEER.ENERGY(og,fg,bottle_volume,units,primed_gas))',
      format: "whole",
      unit: words.energy,
      name: "energy_now",
    },
  ],
];

/** What the sheet is, beside its title; an unplugged copy says there what stands still. */
export const sheetKind = "Gylebook batch sheet";
export const sheetKindAt = "G1";

/** A bill without colours has no colour: 0 would be water. Words in their place are left to the call to refuse. */
const noColours = "AND(SUM(INDEX(malt,0,4))=0,SUMPRODUCT(--ISTEXT(INDEX(malt,0,4)))=0)";

/** 1. Card: what the batch is, and its figures as planned and as reached. Returns the cell that shows the colour. */
export function card(b: BatchBuilder, contents: BatchContents, lines: BatchLines, words: UnitWords): { swatch: string; colour: string } {
  b.height(28);
  b.put("A", '=IF(batch_name="","A batch without a name yet",batch_name)', { style: "title", mergeTo: "F" });
  b.put("G", sheetKind, { style: "hint", mergeTo: "I" });
  b.put("K", "Workings: the printed sheet ends at column I. Plan of this sheet:", { style: "hint" });
  b.put("L", planVersion, { style: "hint", name: "gylebook" });
  const hint = (label: string, cell: string, [text, { content, name }]: SheetLine): void => {
    b.put(label, text, { style: "hint" });
    b.put(cell, content, { style: "hint", ...(name && { name }) });
  };
  hint("N", "O", lines.id);
  b.row += 1;
  hint("K", "L", lines.kitName);
  b.put(
    "A",
    "Underlined cells are yours to fill in; shaded cells calculate. Local codes and the makers' labels come before anything written here.",
    { style: "hint", mergeTo: "I" },
  );
  b.row += 1;
  section(b, 1, "Card", "What was planned, what was reached");

  const first = b.row;
  const [unitsLabel, units] = lines.units;
  const left: readonly [string, Field][] = [
    lines.batchName,
    lines.number,
    lines.brewedOn,
    lines.startTime,
    lines.style,
    lines.volume,
    // The other units are no choice: nothing on the sheet would follow.
    [unitsLabel, { ...units, choices: [contents.units] }],
    ["Energy in one bottle", { content: '=IF(N(fg_reached)=0,"",energy_now)', format: "whole", unit: words.energy, name: "energy" }],
  ];
  for (const [label, field] of left) {
    leftField(b, label, field);
    b.row += 1;
  }

  workings(b, byNewestReading(words), first);

  b.row = first;
  b.put("G", "Planned", { style: "headingRight" });
  b.put("H", "Reached", { style: "headingRight" });
  const whole = (formula: string, ofParts?: string): string => unlessInParts(contents.partsOfWort !== undefined, formula, ofParts);
  const formulas: Readonly<Record<keyof typeof cardFigures, readonly [plan: string, reached: string]>> = {
    originalGravity: ["=GYLE.WORT.GRAVITY(malt,gravity_volume,grain_efficiency,units)", '=IF(og_reached="","",og)'],
    finalGravity: ["=GYLE.YEAST.FINISH(og_plan,attenuation)", '=IF(OR(verdict="steady",verdict="stalled"),fg,"")'],
    alcohol: ["=GYLE.BEER.ABV(og_plan,fg_plan)", '=IF(N(fg_reached)=0,"",abv_now)'],
    bitterness: [
      bitternessFormula("HOPS.IBU", modelOf(contents)),
      '=IF(OR(volume_reached="",ibu_plan=""),"",ibu_plan*volume/volume_reached)',
    ],
    colour: [
      `=IF(${noColours},"",GYLE.WORT.COLOUR(malt,gravity_volume,colour_scale,units))`,
      '=IF(OR(volume_reached="",colour_plan=""),"",GYLE.WORT.COLOUR(malt,gravity_volume*volume_reached/volume,colour_scale,units))',
    ],
    bottles: [
      `=${whole('IF(into="keg","",INDEX(GYLE.PACK.BOTTLES(volume,bottle_volume,bottling_loss,units),1,1))', "bottles_ready")}`,
      `=${whole('IF(N(bottles_filled)=0,"",bottles_filled)', 'IF(parts_bottles=0,"",parts_bottles)')}`,
    ],
    cost: [
      '=IF(SUM(malt_cost,hop_cost,yeast_cost,other_cost)=0,"",SUM(malt_cost,hop_cost,yeast_cost,other_cost))',
      `=${whole('IF(OR(cost_plan="",N(bottles_filled)=0),"",cost_plan/bottles_filled)')}`,
    ],
  };
  const keys = Object.keys(cardFigures) as (keyof typeof cardFigures)[];
  for (const [index, key] of keys.entries()) {
    const { label, format, unit = "", plan, reached }: CardFigure = cardFigures[key];
    const row = first + 1 + index;
    b.put("E", label, { style: "label", mergeTo: "F" }, row);
    b.put("G", formulas[key][0], { style: "keyResult", format, name: plan }, row);
    b.put("H", formulas[key][1], { style: "keyResult", format, name: reached }, row);
    if (unit !== "") b.put("I", key === "alcohol" ? alcoholUnit : unit, { style: "unit" }, row);
  }
  const colourRow = first + 1 + keys.indexOf("colour");
  const srm = contents.units === "us" ? "colour_plan" : "GYLE.BEER.SRM(colour_plan)";
  const swatch = b.put(
    "I",
    `=IF(colour_plan="","",GYLE.BEER.HEX(${srm}))`,
    {
      style: "swatch",
      name: "swatch",
      note: "About the colour of a glass 5 cm deep, computed from an absorption spectrum. A guide, not a measurement. From 50 SRM (98 EBC) up the figure is above the scale that the curve was stated for: black, whatever it says.",
    },
    colourRow,
  );
  b.row = first + left.length;
  b.gap();
  return { swatch, colour: `G${colourRow}` };
}
