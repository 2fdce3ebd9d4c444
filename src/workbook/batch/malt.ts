import type { SheetBuilder } from "../plan/sheet-builder";
import type { BatchContents } from "./contents";
import { fieldRows, inputTable, section } from "./fields";
import type { UnitWords } from "./unit-words";

const rows = 6;

/** 3. Malt and sugar: the table that gravity and colour come from. */
export function malt(b: SheetBuilder, { malt: lines, kit, units }: BatchContents, words: UnitWords): void {
  section(b, 3, "Malt and sugar", "Steeped grain gives colour and taste; the extract gives most of the sugar");
  const heading = b.row;
  const { first, last } = inputTable(
    b,
    "Malt",
    [
      { letter: "A", heading: "Ingredient", format: "text" },
      { letter: "B", heading: `Mass ${words.mass}`, format: "two" },
      { letter: "C", heading: "Yield %", format: "one" },
      { letter: "D", heading: "Handling" },
      { letter: "E", heading: `Colour ${words.maltColour}`, format: "one" },
      { letter: "F", heading: "Cost", format: "money" },
    ],
    lines.map(({ ingredient, mass, yieldPercent, handling, colour, cost }) => [ingredient, mass, yieldPercent, handling, colour, cost]),
    rows,
  );
  b.put("G", "Share", { style: "headingRight" }, heading);
  b.put("H", "Remark", { style: "heading", mergeTo: "I" }, heading);
  for (let row = first; row <= last; row += 1) {
    b.put("G", `=IF(N(B${row})=0,"",B${row}/SUM($B$${first}:$B$${last}))`, { style: "result", format: "percent" }, row);
    b.put("H", "", { style: "inputText", format: "text", mergeTo: "I" }, row);
  }
  b.name("malt", `B${first}:E${last}`);
  b.name("malt_mass", `B${first}:B${last}`);
  b.name("malt_handling", `D${first}:D${last}`);
  b.name("malt_cost", `F${first}:F${last}`);
  b.validate({ kind: "list", range: `D${first}:D${last}`, choices: ["steep", "extract", "sugar"], message: "steep, extract or sugar." });
  b.between(`B${first}:B${last}`, [0, 1000]);
  b.between(`C${first}:C${last}`, [0, 100]);
  fieldRows(
    b,
    [
      ["Steep at", { content: kit.steepTemperature, format: "whole", unit: words.temperature, name: "steep_temperature" }],
      ["Steep for", { content: kit.steepMinutes, format: "whole", unit: "min", name: "steep_minutes", note: `Stop at 30 min or at ${units === "us" ? "170 °F" : "77 °C"}, whichever comes first (common practice).` }],
      ["Sugar won from steeped grain", { content: kit.steepEfficiencyPercent, format: "whole", unit: "% of its yield", name: "steep_efficiency", between: [1, 100] }],
    ],
    [
      ["Grain in the bag", { content: '=SUMIF(malt_handling,"steep",malt_mass)', format: "two", unit: words.mass, name: "grain_mass" }],
      ["Average gravity in the kettle", { content: '=IF(water_before_boil="","",GYLE.WORT.GRAVITY(malt,(water_before_boil+water_chilled)/2,steep_efficiency,units))', format: "gravity", unit: "the bitterness goes by it", name: "kettle_gravity" }],
      ["Scale of the colours", { content: units === "us" ? "SRM" : "EBC", name: "colour_scale", choices: [units === "us" ? "SRM" : "EBC"] }],
    ],
  );
}
