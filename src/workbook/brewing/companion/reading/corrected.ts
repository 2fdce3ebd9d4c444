import { beerRefractometer } from "../../../../functions/beer/refractometer";
import { wortHydrometer } from "../../../../functions/wort/hydrometer";
import { wortPlato } from "../../../../functions/wort/plato";
import { wortRefractometer } from "../../../../functions/wort/refractometer";
import type { Filled, Scale } from "../../../batch/contents";
import { ask, type Asked } from "../ask";
import { unitsOf, type BatchSheet } from "../../../batch/read/batch-sheets";

export type Instrument = "hydrometer" | "refractometer";

/** What the brewer read off, in the sheet's units. */
export interface Measured {
  readonly instrument: Instrument;
  readonly reading: Filled<number>;
  /** Of the hydrometer; a refractometer is read in °Brix. */
  readonly scale: Scale;
  /** Of the hydrometer's sample. */
  readonly sampleTemperature: Filled<number>;
  /** Refractometer in fermenting beer: its reading before the yeast went in. */
  readonly originalBrix: Filled<number>;
}

/** A reading as it will stand in the sheet, and the gravity that the sheet will make of it. */
export interface SheetReading {
  readonly reading: number;
  readonly scale: Scale;
  readonly sampleTemperature: number;
  readonly gravity: number;
  /** For the cell's note: where a figure comes from that no hydrometer showed. */
  readonly note?: string;
}

export type Corrected =
  { readonly ready: SheetReading; readonly problem?: undefined } | { readonly ready?: undefined; readonly problem: string };

/** Corrects a reading through the worksheet functions, as the sheet will; `problem` is "" while something is missing. */
export function corrected(sheet: BatchSheet, measured: Measured, liquid: "wort" | "beer"): Corrected {
  const { instrument, reading, scale, sampleTemperature, originalBrix } = measured;
  if (instrument === "hydrometer") {
    const { value: gravity, problem } = hydrometer(sheet, reading, sampleTemperature, scale);
    return gravity === undefined
      ? { problem }
      : { ready: { reading: Number(reading), scale, sampleTemperature: Number(sampleTemperature), gravity } };
  }
  const { value: gravity, problem } = liquid === "wort" ? ask(wortRefractometer, reading) : ask(beerRefractometer, originalBrix, reading);
  if (gravity === undefined) return { problem };
  const before = liquid === "wort" ? "" : `, ${originalBrix} before the yeast went in`;
  return atCalibration(sheet, gravity, `Worked out from a refractometer: ${reading} °Brix${before}.`);
}

function hydrometer(sheet: BatchSheet, reading: Filled<number>, sampleTemperature: Filled<number>, scale: Scale): Asked {
  return ask(wortHydrometer, reading, sampleTemperature, sheet.value("calibrated_at"), scale, unitsOf(sheet));
}

/**
 * The sheet corrects whatever stands in its readings. A gravity that is known already is written as what the hydrometer
 * would show at the temperature printed on it, so that the sheet arrives at that gravity again.
 */
export function atCalibration(sheet: BatchSheet, gravity: number, note: string): Corrected {
  const calibratedAt = Number(sheet.number("calibrated_at")) || (unitsOf(sheet) === "us" ? 68 : 20);
  const first = hydrometer(sheet, gravity, calibratedAt, "SG");
  if (first.value === undefined) return { problem: first.problem };
  const reading = Number((gravity + (gravity - first.value)).toFixed(5));
  return { ready: { reading, scale: "SG", sampleTemperature: calibratedAt, gravity, note } };
}

/** What a refractometer showed, or would have, before the yeast went in: for the form to begin with. */
export function likelyOriginalBrix(sheet: BatchSheet): Filled<number> {
  const { value: plato } = ask(wortPlato, sheet.value("og"));
  return plato === undefined ? "" : Number((plato * usualWortCorrection).toFixed(1));
}

/** The default of GYLE.WORT.REFRACTOMETER. */
const usualWortCorrection = wortRefractometer.parameters.wortCorrection.default;
