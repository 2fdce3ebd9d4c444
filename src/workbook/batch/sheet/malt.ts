import type { BatchContents } from "../contents";
import { nameTable, tableCells, tableColumns } from "../derived/sheet-lines";
import { batchFields } from "../fields";
import { fieldRows, inputTable, section, workings, type BatchBuilder, type BatchLines, type Field } from "./fields";
import type { UnitWords } from "../unit-words";

/** Rows of a new sheet; a batch with more lines gets as many. */
export const maltTableRows = 6;

/** 3. Malt and sugar: the table that gravity and colour come from. */
export function malt(b: BatchBuilder, contents: BatchContents, { kit, wort }: BatchLines, words: UnitWords): void {
  const { malt: bill, units, method } = contents;
  const table = batchFields.malt;
  section(
    b,
    3,
    "Malt and sugar",
    method === "extract"
      ? "Steeped grain gives colour and taste; the extract gives most of the sugar"
      : "The mash turns starch into sugar; extract and sugar beside it count whole",
  );
  const heading = b.row;
  const { first, last } = inputTable(b, "Malt", tableColumns(table, contents), tableCells(table, bill), maltTableRows);
  b.put("G", "Share", { style: "headingRight" }, heading);
  b.put("H", "Remark", { style: "heading", mergeTo: "I" }, heading);
  for (let row = first; row <= last; row += 1) {
    b.put("G", `=IF(N(B${row})=0,"",B${row}/SUM($B$${first}:$B$${last}))`, { style: "result", format: "percent" }, row);
    b.put("H", bill[row - first]?.remark ?? "", { style: "inputText", format: "text", mergeTo: "I" }, row);
  }
  nameTable(b, table, contents, { first, last });
  workings(b, [kit.absorption, kit.deadSpace, kit.tunSize, kit.sanitiserDose, wort.collected], heading);
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
    fieldRows(b, [kit.soakTemperature, kit.soakMinutes, kit.grainEfficiencyPercent], [common.grain, common.kettle, common.scale]);
    return;
  }
  fieldRows(
    b,
    [kit.soakTemperature, kit.soakMinutes, kit.grainEfficiencyPercent, kit.mashThickness, kit.grainTemperature],
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
          // What lifts the mash to its rests is no longer there to sparge with.
          content: `=IF(OR(mash_water="",water_collect=""),"",MAX(0,water_collect-${contents.mashRunOff ? "mash_full" : "mash_water"}))`,
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
