import { wortEfficiency } from "../../../../functions/wort/efficiency";
import { wortGravity } from "../../../../functions/wort/gravity";
import { wortMix } from "../../../../functions/wort/mix";
import type { Filled } from "../../../batch/contents";
import { gravityAllowance } from "../../../batch/gravity-allowance";
import type { NamedCells } from "../../../grid/read/named-cells";
import { ask } from "../ask";
import { changeCells, type CellChange } from "../change-cells";
import { ChangeRefused } from "../outcome";
import { gravityWords, shown } from "../words";
import { unitsOf } from "../../../batch/read/batch-sheets";
import { atCalibration, corrected, type Measured, type SheetReading } from "./corrected";

/** The reading before the yeast goes in, and how much wort there is. */
export interface OriginalMeasured extends Measured {
  /** Wort in the fermenter; where `sampled` is "before", without the top-up water. */
  readonly volume: Filled<number>;
  /** Whether the sample was drawn before the top-up water was mixed in. */
  readonly sampled: "before" | "after";
  readonly topUp: Filled<number>;
}

export interface Original extends SheetReading {
  readonly volume: number;
  /** Why it is hard to believe; "" when the ingredients can give it. */
  readonly doubt: string;
}

/** Turns it into the gravity of the whole and holds it against the ingredients; `problem` is "" while something is missing. */
export function originalGravity(
  sheet: NamedCells,
  measured: OriginalMeasured,
): { readonly ready: Original; readonly problem?: undefined } | { readonly ready?: undefined; readonly problem: string } {
  const { volume, sampled, topUp } = measured;
  const sample = corrected(sheet, measured, "wort");
  if (!sample.ready) return sample;
  if (volume === "" || volume <= 0) return { problem: "" };
  if (sampled === "after") return { ready: { ...sample.ready, volume, doubt: doubtOf(sheet, sample.ready.gravity, volume, "after") } };
  if (topUp === "" || topUp <= 0) return { problem: "" };
  const whole = ask(wortMix, [[volume], [topUp]], [[sample.ready.gravity], [1]]);
  if (whole.value === undefined) return { problem: whole.problem };
  const units = unitsOf(sheet);
  const note = [
    sample.ready.note,
    `Read as ${gravityWords(sample.ready.gravity)} in ${shown(volume, "volume", units)} before ${shown(topUp, "volume", units)} of top-up water; this is the gravity of the whole.`,
  ];
  const mixed = atCalibration(sheet, whole.value, note.filter((part) => part !== undefined).join(" "));
  return mixed.ready
    ? { ready: { ...mixed.ready, volume: volume + topUp, doubt: doubtOf(sheet, whole.value, volume + topUp, "before") } }
    : mixed;
}

/** A reading that malt and volume cannot give is questioned: extract fixes the gravity, a mash at least its upper end. */
function doubtOf(sheet: NamedCells, gravity: number, volume: number, sampled: "before" | "after"): string {
  const shared = (Number(sheet.number("gravity_volume")) * volume) / Number(sheet.number("volume"));
  const malt = sheet.block("malt");
  const units = unitsOf(sheet);
  if (sheet.has("mash_water")) {
    const efficiency = ask(wortEfficiency, malt, shared, gravity, units);
    if (efficiency.value === undefined)
      return efficiency.problem === ""
        ? ""
        : `${gravityWords(gravity)} is more or less than this grain can give at all. Stir well and sample again.`;
    return efficiency.value > 100
      ? `${gravityWords(gravity)} would be ${efficiency.value.toFixed(0)} % of the grain's sugar: it cannot be. Stir well and sample again.`
      : "";
  }
  const expected = ask(wortGravity, malt, shared, sheet.value("grain_efficiency"), units);
  if (expected.value === undefined || Math.abs(gravity - expected.value) <= gravityAllowance) return "";
  const toppedUp = sampled === "after" && Number(sheet.number("top_up")) > 0;
  const words = `the malt gives about ${gravityWords(expected.value)} in ${shown(volume, "volume", units)}`;
  if (gravity > expected.value)
    return `${gravityWords(gravity)} is more than it can be: ${words}. ${toppedUp ? "Was it drawn before the top-up water was mixed in? Then say so above." : "Was the extract stirred in, and is the volume right?"} Stir, sample again.`;
  return `${gravityWords(gravity)} is less than it should be: ${words}. ${toppedUp ? "Top-up water likes to lie on top of the wort." : "Is extract left in the tin, or more wort than written?"} Stir, sample again.`;
}

/** Writes reading, scale, temperature and volume; each of these cells but the scale must still be empty. */
export async function writeOriginal(
  context: Excel.RequestContext,
  seen: NamedCells,
  { reading, scale, sampleTemperature, volume, note }: Original,
): Promise<void> {
  const changes: CellChange[] = [
    { name: "og_reading", label: "the reading before the yeast", content: reading, ...(note !== undefined && { note }) },
    { name: "og_scale", label: "its scale", content: scale },
    { name: "og_temperature", label: "the sample's temperature", content: sampleTemperature },
    { name: "volume_reached", label: "the volume in the fermenter", content: volume },
  ];
  const filled = changes.find(({ name }) => name !== "og_scale" && seen.value(name) !== "");
  if (filled)
    throw new ChangeRefused(`The sheet holds ${filled.label} already (${seen.value(filled.name)}): if it is wrong, clear that cell first.`);
  await changeCells(context, seen, changes);
}
