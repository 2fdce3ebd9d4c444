import { BrewingError } from "../../core/brewing-error";
import { fitFermentation, requireFall, type FermentationFit } from "../../core/log/fit";
import { forecastOf } from "../../core/log/forecast";
import { steadiness } from "../../core/log/steady";
import { describeFunction } from "../describe";
import { curveSources, expected, originalGravity, readingGravities, readingsOf, times } from "./columns";

export const logForecast = describeFunction({
  id: "LOG.FORECAST",
  summary: "Where a fermentation will end and when, from your log of gravity readings, each with its ±.",
  parameters: { times, gravities: readingGravities, originalGravity, expected },
  result: {
    kind: "grid",
    doc: "Six labelled rows: state, in the word of GYLE.LOG.STEADY; final gravity; day it gets there (within 0.001), as a date or day like the times; per cent of the fall that is done; steepest fall in a day; ends, fitted to the readings or held at the gravities given. ± holds 19 times out of 20; it is blank for an end that was held. A stalled log shows its state and no forecast; a steady one too short for a curve shows its last reading.",
    columns: ["what", "value", "plus or minus"],
  },
  equation: "G(t) = FG + (OG − FG) / (1 + exp(B (t − M))) by least squares; day = M + ln((OG − FG)/0.001 − 1)/B; ± = t(95 %) × √(g′ s²(J′J)⁻¹ g)",
  sources: curveSources,
  examples: [
    {
      arguments: [[[0], [1], [2], [3], [5], [8]], [[1.0491], [1.0462], [1.0372], [1.0228], [1.0109], [1.01]]],
      value: [["state", "steady", ""], ["final gravity", 1.01, 0.001], ["day it gets there", 4.94, 0.37], ["per cent done", 100, ""], ["steepest fall a day", 0.015, ""], ["ends", "fitted", ""]],
      tolerance: 0.3,
      from: "made from the curve with ends 1.050 and 1.010, B = 1.5 a day, M = 2.5 days, rounded to 0.0001: there on day 2.5 + ln 39 / 1.5",
    },
    {
      arguments: [[[0], [2], [3]], [[1.04857], [1.04], [1.03]], 1.05, 1.01],
      value: [["state", "working", ""], ["final gravity", 1.01, ""], ["day it gets there", 6.335, 0.65], ["per cent done", 50, ""], ["steepest fall a day", 0.011, ""], ["ends", "held", ""]],
      tolerance: 0.3,
      from: "worked by hand from the last two: a quarter and half of the fall are a day apart, so B = ln 3, M = 3, and there on day 3 + ln 39 / ln 3",
    },
    {
      arguments: [[[0], [3], [6], [8]], [[1.05], [1.03], [1.022], [1.022]], null, 1.012],
      value: [["state", "stalled", ""], ["final gravity", "", ""], ["day it gets there", "", ""], ["per cent done", "", ""], ["steepest fall a day", "", ""], ["ends", "", ""]],
      from: "common practice: two equal readings a day apart, 0.010 above the gravity expected",
    },
  ],
  cautions: [
    "A forecast is no reading: bottle only when GYLE.LOG.STEADY says steady. Beer bottled by forecast can burst its bottles.",
    "The ± knows the scatter of your readings, not a change of temperature, a tired yeast or sugar added later.",
  ],
  compute: (values) => {
    const readings = readingsOf(values.times, values.gravities);
    const newest = readings.at(-1);
    if (newest === undefined) return [[""]];
    const state = steadiness(readings, 0.001, values.expected);
    if (state === "stalled") return rows(state, ["", ""], ["", ""], "", "", "");
    // What rises has other words, which the fit knows.
    if (state !== "rising") requireFall(Math.max(values.originalGravity ?? 0, ...readings.map(({ gravity }) => gravity)) - newest.gravity);
    const fit = fitOrSteady(state, () => fitFermentation(readings, values.originalGravity, values.expected));
    if (fit === undefined) return rows(state, [newest.gravity, ""], ["", ""], 100, "", "");
    const forecast = forecastOf(fit, newest.day);
    return rows(state, [forecast.finalGravity, forecast.finalGravityPlusOrMinus ?? ""], [forecast.day, forecast.dayPlusOrMinus], 100 * forecast.shareDone, forecast.steepestFallPerDay, fit.ends);
  },
});

/** A steady log has ended at its newest reading, also when its readings cannot tell the way there. */
function fitOrSteady(state: string, fit: () => FermentationFit): FermentationFit | undefined {
  try {
    return fit();
  } catch (problem) {
    if (state === "steady" && problem instanceof BrewingError && problem.reason === "uncovered") return undefined;
    throw problem;
  }
}

type Cell = number | string;
const rows = (state: string, gravity: [Cell, Cell], day: [Cell, Cell], done: Cell, fall: Cell, ends: string): Cell[][] => [
  ["state", state, ""],
  ["final gravity", ...gravity],
  ["day it gets there", ...day],
  ["per cent done", done, ""],
  ["steepest fall a day", fall, ""],
  ["ends", ends, ""],
];
