import type { SheetBuilder } from "../../grid/plan/sheet-builder";
import type { BatchContents } from "../contents";
import { fieldRows, inputTable, section, workings, type Field } from "./fields";
import type { UnitWords } from "../unit-words";

/** Rows of a new sheet; a batch with more lines gets as many. */
export const maltTableRows = 6;

/** 3. Malt and sugar: the table that gravity and colour come from. */
export function malt(b: SheetBuilder, { malt: lines, kit, wort, units, method }: BatchContents, words: UnitWords): void {
  section(
    b,
    3,
    "Malt and sugar",
    method === "extract"
      ? "Steeped grain gives colour and taste; the extract gives most of the sugar"
      : "The mash turns starch into sugar; extract and sugar beside it count whole",
  );
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
    maltTableRows,
  );
  b.put("G", "Share", { style: "headingRight" }, heading);
  b.put("H", "Remark", { style: "heading", mergeTo: "I" }, heading);
  for (let row = first; row <= last; row += 1) {
    b.put("G", `=IF(N(B${row})=0,"",B${row}/SUM($B$${first}:$B$${last}))`, { style: "result", format: "percent" }, row);
    b.put("H", lines[row - first]?.remark ?? "", { style: "inputText", format: "text", mergeTo: "I" }, row);
  }
  b.name("malt", `B${first}:E${last}`);
  b.name("malt_mass", `B${first}:B${last}`);
  b.name("malt_handling", `D${first}:D${last}`);
  b.name("malt_cost", `F${first}:F${last}`);
  b.validate({
    kind: "list",
    range: `D${first}:D${last}`,
    choices: ["mash", "steep", "extract", "sugar"],
    message: "mash, steep, extract or sugar.",
  });
  b.between(`B${first}:B${last}`, [0, 1000]);
  b.between(`C${first}:C${last}`, [0, 100]);
  workings(
    b,
    [
      [
        "Water that the grain keeps",
        {
          content: kit.absorption,
          format: "two",
          unit: units === "us" ? "US gal/lb" : "L/kg",
          name: "absorption",
          note: "What is missing after the grain: water in, less wort out, for each unit of its mass. What the grain dissolves is counted in it already. 1.0 L/kg (0.12 US gal/lb) is common practice; less if the bag is squeezed.",
        },
      ],
      [
        "Dead space of the mash tun",
        {
          content: kit.deadSpace,
          format: "two",
          unit: words.volume,
          name: "tun_dead_space",
          note: "What stays below the false bottom and never runs off; 0 where the grain hangs in a bag. It only asks for more water: the sugar in it is missing in “Sugar won from the grain” already, which goes by what reaches the kettle.",
        },
      ],
      [
        "Mash tun holds",
        {
          content: kit.tunSize || "",
          format: "two",
          unit: words.volume,
          name: "tun_size",
          note: "Leave empty where the mash stands in the kettle.",
        },
      ],
      [
        "Sanitiser, by its label",
        {
          content: kit.sanitiserDose || "",
          format: "two",
          unit: words.dosePerVolume,
          name: "sanitiser_per_volume",
          note: "Concentrate for each unit of water, as the maker's label says. Until it is typed, the sheet gives no dose.",
        },
      ],
      [
        "Water really collected",
        {
          content: wort.collected,
          format: "two",
          unit: words.volume,
          name: "collected",
          note: "Cold, all of it. Leave empty where it was what the sheet says; the kit's boil-off is learned from it.",
        },
      ],
    ],
    heading,
  );
  const common = {
    grain: [
      "Grain",
      {
        content: '=SUMIF(malt_handling,"steep",malt_mass)+SUMIF(malt_handling,"mash",malt_mass)',
        format: "two",
        unit: words.mass,
        name: "grain_mass",
      },
    ],
    kettle: [
      "Average gravity in the kettle",
      {
        content: '=IF(water_before_boil="","",GYLE.WORT.GRAVITY(malt,(water_before_boil+water_chilled)/2,grain_efficiency,units))',
        format: "gravity",
        unit: "the bitterness goes by it",
        name: "kettle_gravity",
      },
    ],
    scale: [
      "Scale of the colours",
      { content: units === "us" ? "SRM" : "EBC", name: "colour_scale", choices: [units === "us" ? "SRM" : "EBC"] },
    ],
  } satisfies Record<string, [string, Field]>;
  if (method === "extract") {
    fieldRows(
      b,
      [
        ["Steep at", { content: kit.soakTemperature, format: "whole", unit: words.temperature, name: "soak_temperature" }],
        [
          "Steep for",
          {
            content: kit.soakMinutes,
            format: "whole",
            unit: "min",
            name: "soak_minutes",
            note: `Stop at 30 min or at ${units === "us" ? "170 °F" : "77 °C"}, whichever comes first (common practice).`,
          },
        ],
        [
          "Sugar won from steeped grain",
          { content: kit.grainEfficiencyPercent, format: "whole", unit: "% of yield", name: "grain_efficiency", between: [1, 100] },
        ],
      ],
      [common.grain, common.kettle, common.scale],
    );
    return;
  }
  fieldRows(
    b,
    [
      [
        "Mash at",
        {
          content: kit.soakTemperature,
          format: "whole",
          unit: words.temperature,
          name: "soak_temperature",
          note: "Cooler gives a drier beer, warmer a fuller one.",
        },
      ],
      ["Mash for", { content: kit.soakMinutes, format: "whole", unit: "min", name: "soak_minutes" }],
      [
        "Sugar won from the grain",
        { content: kit.grainEfficiencyPercent, format: "whole", unit: "% of yield", name: "grain_efficiency", between: [1, 100] },
      ],
      [
        "Water to grain in the mash",
        { content: kit.mashThickness, format: "two", unit: units === "us" ? "US gal/lb" : "L/kg", name: "mash_thickness" },
      ],
      ["Grain stands at", { content: kit.grainTemperature, format: "whole", unit: words.temperature, name: "grain_temperature" }],
    ],
    [
      common.grain,
      [
        "Water for the mash",
        { content: '=IF(grain_mass=0,"",grain_mass*mash_thickness)', format: "two", unit: words.volume, name: "mash_water" },
      ],
      [
        "Heat it to",
        {
          content: '=IF(mash_water="","",GYLE.WATER.STRIKE(grain_mass,mash_water,grain_temperature,soak_temperature,units))',
          format: "one",
          unit: words.temperature,
          name: "strike_temperature",
          style: "keyResult",
        },
      ],
      [
        "Water to sparge with",
        {
          content: '=IF(OR(mash_water="",water_collect=""),"",MAX(0,water_collect-mash_water))',
          format: "two",
          unit: words.volume,
          name: "sparge_water",
        },
      ],
      common.kettle,
      common.scale,
    ],
  );
}
