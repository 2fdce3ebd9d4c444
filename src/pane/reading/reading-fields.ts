import type { BatchSheet } from "../../workbook/batch/read/batch-sheets";
import { likelyOriginalBrix, type Instrument, type Measured } from "../../workbook/brewing/companion/reading/corrected";
import type { OriginalMeasured } from "../../workbook/brewing/companion/reading/original-gravity";
import type { Scale } from "../../workbook/batch/contents";
import { nowField } from "../fields/moments";
import { numberIn, textOf } from "../fields/number-field";

/** What stands in the form, as typed. */
export interface ReadingFields {
  readonly liquid: "wort" | "beer";
  readonly instrument: Instrument;
  readonly scale: Scale;
  readonly reading: string;
  readonly sampleTemperature: string;
  readonly originalBrix: string;
  readonly when: string;
  readonly beerTemperature: string;
  readonly volume: string;
  readonly sampled: "before" | "after";
  readonly topUp: string;
}

/** Before the yeast until the sheet has its original gravity, then the beer. */
export function firstFields(sheet: BatchSheet): ReadingFields {
  return {
    liquid: sheet.value("og_reading") === "" && sheet.block("readings").every(([reading]) => reading === "") ? "wort" : "beer",
    instrument: "hydrometer",
    scale: "SG",
    reading: "",
    sampleTemperature: "",
    originalBrix: textOf(likelyOriginalBrix(sheet)),
    when: nowField(),
    beerTemperature: "",
    volume: "",
    sampled: "after",
    topUp: textOf(sheet.number("top_up")),
  };
}

export function measuredIn({ instrument, scale, reading, sampleTemperature, originalBrix }: ReadingFields): Measured {
  return {
    instrument,
    scale,
    reading: numberIn(reading),
    sampleTemperature: numberIn(sampleTemperature),
    originalBrix: numberIn(originalBrix),
  };
}

export const originalIn = (fields: ReadingFields): OriginalMeasured => ({
  ...measuredIn(fields),
  volume: numberIn(fields.volume),
  sampled: fields.sampled,
  topUp: numberIn(fields.topUp),
});
