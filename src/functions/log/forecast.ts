import { BrewingError } from "../../core/brewing-error";
import { fitFermentation, type FermentationFit } from "../../core/log/fit";
import { forecastOf } from "../../core/log/forecast";
import { steepestFallPerDay } from "../../core/log/richards";
import { standingOf, type Standing } from "../../core/log/steady";
import { describeFunction } from "../describe";
import { countFrom, curveEquation, curveSources, expected, originalGravity, readingGravities, readingsOf, times } from "./columns";

/** A beer at rest stands where it was read, good to a line. */
const oneLine = 0.001;
/** Nearer to its end than this a beer gets no day: it is near its end, and only readings tell (our judgement). */
const halfADay = 0.5;
/** In days: no forecast is surer, so it is never shown as ± 0.0. */
const leastSpread = 0.05;

export const logForecast = describeFunction({
  id: "LOG.FORECAST",
  summary: "Where a fermentation will end and when, from your log of gravity readings, each with its ±.",
  parameters: { times, gravities: readingGravities, originalGravity, expected, countFrom },
  result: {
    kind: "grid",
    doc: "Six labelled rows: state, in the word of GYLE.LOG.STEADY, and what steady or stalled rests on; final gravity; day it gets there (the first on which it is within 0.001 of its end), as a date or day like the times; per cent of the fall that is done; steepest fall in a day; ends, fitted where the readings tell the end better than what you expected, else held. ± is meant to hold 19 times out of 20; of fermentations that follow another law than the curve it held the final gravity in 9 of 10 logs and more, the day in 8 of 10. The day is the middle of the days that are possible and never before the newest reading; none where that is less than half a day after it. A beer at rest shows its reading and no day; one that stalled or has not begun, no forecast.",
    columns: ["what", "value", "plus or minus"],
  },
  equation: `${curveEquation}; the day from 300 curves that the readings leave possible`,
  sources: curveSources,
  examples: [
    {
      arguments: [
        [[0], [1], [2], [3], [5], [8]],
        [[1.0491], [1.0462], [1.0372], [1.0228], [1.0109], [1.01]],
      ],
      value: [
        ["state", "steady", "2 readings over 3.0 days"],
        ["final gravity", 1.01, 0.001],
        ["day it gets there", "", ""],
        ["per cent done", 100, ""],
        ["steepest fall a day", 0.015, ""],
        ["ends", "", ""],
      ],
      tolerance: 0.001,
      from: "made from a logistic with ends 1.050 and 1.010, 1.5 a day, half way on day 2.5: steepest 1.5 × 0.040 / 4; the last two agree",
    },
    {
      arguments: [[[0], [2], [3]], [[1.04857], [1.04], [1.03]], 1.05, 1.01],
      value: [
        ["state", "working", ""],
        ["final gravity", 1.01, 0.005],
        ["day it gets there", 8.6, 3],
        ["per cent done", 50, ""],
        ["steepest fall a day", 0.011, ""],
        ["ends", "held", ""],
      ],
      tolerance: 1.2,
      from: "worked by hand as a logistic from the last two: a quarter and half of the fall are a day apart, there on day 3 + ln 39 / ln 3 = 6.3, the early end of what is possible; the day and its ± are computed. Attenuation known to 9 points: ± 0.09 × 0.050",
    },
    {
      arguments: [[[0], [3], [6], [8]], [[1.05], [1.03], [1.022], [1.022]], null, 1.012],
      value: [
        ["state", "stalled", "2 readings over 2.0 days"],
        ["final gravity", "", ""],
        ["day it gets there", "", ""],
        ["per cent done", "", ""],
        ["steepest fall a day", "", ""],
        ["ends", "", ""],
      ],
      from: "common practice: two equal readings a day apart, 0.010 above the gravity expected",
    },
  ],
  cautions: [
    "A forecast is no reading: bottle only when GYLE.LOG.STEADY says steady. Beer bottled by forecast can burst its bottles.",
    "The ± allows for readings that scatter, for an expected gravity that is off, and for fermentations of another shape; not for a yeast that gives up, or sugar added later.",
  ],
  compute: (values) => {
    const readings = readingsOf(values.times, values.gravities);
    const [first] = readings;
    const newest = readings.at(-1);
    if (first === undefined || newest === undefined) return [[""]];
    const known = { originalGravity: values.originalGravity, expectedGravity: values.expected, countFrom: values.countFrom };
    const standing = standingOf(readings, 0.001, known);
    if (standing.state === "stalled" || standing.state === "not begun") return rows(standing, ["", ""], ["", ""], "", "", "");
    if (standing.state === "steady") {
      const fit = unlessTooEarly(() => fitFermentation(readings, known));
      return rows(standing, [newest.gravity, oneLine], ["", ""], 100, fit === undefined ? "" : steepestFallPerDay(fit.curve), "");
    }
    const forecast = forecastOf(fitFermentation(readings, known), first.day);
    const clearlyAhead = forecast.day >= newest.day + halfADay && forecast.dayPlusOrMinus >= leastSpread;
    return rows(
      standing,
      [forecast.finalGravity, forecast.finalGravityPlusOrMinus],
      clearlyAhead ? [forecast.day, forecast.dayPlusOrMinus] : ["", ""],
      100 * forecast.shareDone,
      forecast.steepestFallPerDay,
      forecast.byReadings ? "fitted" : "held",
    );
  },
});

/** A beer at rest has ended, also when its readings cannot tell the way there. */
function unlessTooEarly(fit: () => FermentationFit): FermentationFit | undefined {
  try {
    return fit();
  } catch (problem) {
    if (problem instanceof BrewingError && problem.reason === "uncovered") return undefined;
    throw problem;
  }
}

type Cell = number | string;
const rows = ({ state, restsOn }: Standing, gravity: [Cell, Cell], day: [Cell, Cell], done: Cell, fall: Cell, ends: string): Cell[][] => [
  [
    "state",
    state,
    restsOn === undefined ? "" : `${restsOn.readings} readings over ${restsOn.days.toFixed(restsOn.days < 10 ? 1 : 0)} days`,
  ],
  ["final gravity", ...gravity],
  ["day it gets there", ...day],
  ["per cent done", done, ""],
  ["steepest fall a day", fall, ""],
  ["ends", ends, ""],
];
