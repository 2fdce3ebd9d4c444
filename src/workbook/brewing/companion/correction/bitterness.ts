import { bitternessModel } from "../../../batch/read/bitterness-model";
import { hopsIbu } from "../../../../functions/hops/ibu";
import { ask } from "../ask";
import { shown } from "../words";
import { unitsOf, type BatchSheet } from "../../../batch/read/batch-sheets";
import type { Correction } from "./corrections";
import type { Missed } from "./plan-and-measured";

/** Less than this much off is not tasted (common practice: a model good to about 20 %). */
const noticed = 0.1;
const lateBoilMinutes = 15;

/** What a correction does to the bitterness, and in the kettle how much hop would bring it back. */
export function bitternessWords(sheet: BatchSheet, missed: Missed, { ibu, result }: Correction): string {
  const { plannedIbu } = missed;
  if (ibu === undefined || plannedIbu === undefined || plannedIbu === 0) return "";
  const figures = `${ibu.toFixed(0)} IBU instead of ${plannedIbu.toFixed(0)}`;
  if (Math.abs(ibu / plannedIbu - 1) <= noticed) return `Bitterness about as planned (${figures}).`;
  if (ibu > plannedIbu) return `More bitter: ${figures}.`;
  const hop = missed.place === "kettle" ? hopToAdd(sheet, missed, plannedIbu - ibu, result.volume) : "";
  return `Less bitter: ${figures}.${hop}`;
}

/** Bitterness is in proportion to the mass of the hop: one unit of it tells how much is wanted. */
function hopToAdd(sheet: BatchSheet, { planned, units }: Missed, lacking: number, volume: number): string {
  const [hop] = sheet
    .block("hop_plan")
    .filter(([, mass, alpha]) => Number(mass) > 0 && Number(alpha) > 0)
    .sort((one, other) => Number(other[2]) - Number(one[2]));
  if (!hop) return "";
  const shared = (Number(sheet.number("gravity_volume")) * volume) / planned.volume;
  const { value: ofOne } = ask(
    hopsIbu,
    [[1, hop[2], lateBoilMinutes]],
    shared,
    sheet.value("kettle_gravity"),
    bitternessModel(sheet),
    sheet.value("boils_at"),
    unitsOf(sheet),
  );
  if (!ofOne) return "";
  return ` To make up for it, boil ${shown(lacking / ofOne, "smallMass", units, units === "us" ? 2 : 0)} more of ${hop[0]} for ${lateBoilMinutes} min.`;
}
