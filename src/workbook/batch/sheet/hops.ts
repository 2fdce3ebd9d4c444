import type { BatchContents } from "../contents";
import { nameTable, tableCells, tableColumns } from "../derived/sheet-lines";
import { batchFields } from "../fields";
import { inputTable, section, workings, type BatchBuilder, type BatchLines } from "./fields";

/** Rows of a new sheet; a batch with more lines gets as many. */
export const hopTableRows = 6;

/** What the bitterness goes by: the model that was chosen, where the sheet has a cell for it. */
export const modelOf = ({ lateHops }: BatchContents): string => (lateHops ? "bitterness_model" : '"tinseth"');

/** Bitterness of the hop table, in the boil and while the wort stands and chills: of all, or of each. */
export const bitternessFormula = (id: "HOPS.IBU" | "HOPS.SHARE", model: string): string =>
  `=GYLE.${id}(hops,gravity_volume,kettle_gravity,${model},boils_at,units,boil_minutes,stand_temperature,stand_minutes,IF(ISNUMBER(chill_minutes),chill_minutes,0),pitch_temperature)`;

/** 4. Hops: what goes in when, and how much bitterness each brings. Returns the cell of the first one's bitterness. */
export function hops(b: BatchBuilder, contents: BatchContents, { hopStand }: BatchLines): string {
  const table = batchFields.hops;
  section(b, 4, "Hops", "Minutes left of the boil; or first wort, stand (beside, column L) or dry");
  const heading = b.row;
  const { first, last } = inputTable(b, "Hops", tableColumns(table, contents), tableCells(table, contents.hops), hopTableRows);
  b.put("G", "IBU each", { style: "headingRight" }, heading);
  b.put("H", "Remark", { style: "heading", mergeTo: "I" }, heading);
  for (let row = first; row <= last; row += 1) {
    const content = row === first ? bitternessFormula("HOPS.SHARE", modelOf(contents)) : "";
    b.put("G", content, { style: "result", format: "one", ...(row === first && { spillsTo: `G${last}` }) }, row);
    b.put("H", contents.hops[row - first]?.remark ?? "", { style: "inputText", format: "text", mergeTo: "I" }, row);
  }
  nameTable(b, table, contents, { first, last });
  workings(
    b,
    [
      hopStand.temperature,
      hopStand.minutes,
      [
        "Chilling down to it takes",
        {
          content:
            '=IF(OR(N(stand_minutes)=0,N(stand_temperature)=0,water_chilled=""),"",IF(stand_temperature>=boils_at,0,GYLE.HEAT.CHILL(water_chilled,boils_at,stand_temperature,tap_temperature,tap_flow,coil,units)))',
          format: "whole",
          unit: "min",
          name: "stand_after",
        },
      ],
    ],
    heading,
  );
  b.gap();
  return `G${first}`;
}
