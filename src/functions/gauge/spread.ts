import { spreadOf } from "../../core/gauge/spread";
import { ArgumentProblem } from "../cell-error";
import { describeFunction, type AnyDescriptor } from "../describe";
import { quantity } from "../quantities";
import { ask, functionOfName, readSpreads } from "./ask";

/** Works on all the other functions, which the registry hands in: so it cannot be asked about itself. */
export const gaugeSpread = (functions: readonly AnyDescriptor[]) =>
  describeFunction({
    id: "GAUGE.SPREAD",
    summary: "The ± of any GYLE result, from the ± of the readings that went into it.",
    parameters: {
      function: {
        kind: "text",
        doc: 'Name of the function in quotes, for example "BEER.ABV": one that takes single cells and answers with a number.',
      },
      arguments: {
        kind: "cells",
        doc: "A row or column with its arguments, just as you type them into the function; blank where one is left out.",
      },
      uncertainties: {
        kind: "cells",
        doc: "The ± of each, beside them and in the same unit; blank where a value is exact. A hydrometer is good to about 0.002, a kitchen thermometer to 1 °C.",
      },
    },
    result: {
      kind: "number",
      quantity: "number",
      doc: "±, in the unit of the function's own result. It means what your ± mean: if those hold 19 times out of 20, so does this.",
    },
    equation:
      "± = √(Σ [½ (f(x + u) − f(x − u))]²); at a limit the step inwards alone; where f bends or breaks over ±u, half the width of the middle 95 % of 1000 fixed draws; with the equation's own ±, where its source states one, in the same sum of squares",
    sources: [
      { cite: "JCGM 100:2008, Guide to the expression of uncertainty in measurement", where: "5.1.2, equation 10, and 5.1.3, note 2" },
      {
        cite: "JCGM 101:2008, Supplement 1, propagation of distributions using a Monte Carlo method",
        where: "7.7, half the width of the 95 % coverage interval",
      },
    ],
    examples: [
      {
        arguments: ["BEER.ABV", [[1.05, 1.01, "simple"]], [[0.002, 0.002, ""]]],
        value: 0.3712,
        tolerance: 0.0001,
        from: "worked by hand: 131.25 × √(0.002² + 0.002²)",
      },
      {
        arguments: ["CLEAN.DOSE", [[10], [4], ["metric"]], [[0.5], [0], [""]]],
        value: 2,
        tolerance: 1e-9,
        from: "worked by hand: 4 mL/L × 0.5 L",
      },
      {
        arguments: ["HEAT.WARM", [[5, 68, 170, 2.4, null, "us"]], [[0.25, "", "", "", "", ""]]],
        value: 1.8,
        tolerance: 0.4,
        from: "worked by hand: the time is in proportion to the volume, so 5 % of some 36 minutes",
      },
      {
        arguments: ["BEER.REFRACTOMETER", [[12, 6, 1]], [["", 0.2, ""]]],
        value: 0.00212,
        tolerance: 0.00001,
        from: "worked by hand: √((0.0034941 × 0.2)² + 0.002²), the second the equation's own",
      },
    ],
    cautions: [
      "It knows the ± that you give it, and that of an equation whose source states one (GYLE.BEER.REFRACTOMETER): not an equation that is wrong for your beer, nor a thermometer that is always off.",
      "The readings are taken as independent; two readings with the same faulty hydrometer are not.",
    ],
    compute: ({ function: name, arguments: typed, uncertainties }) => {
      const descriptor = functionOfName(name, functions);
      // The answer itself comes first: while it is blank there is nothing to say, and its error is the error.
      if (ask(descriptor, typed) === "") return "";
      const spreads = readSpreads(descriptor, typed, uncertainties);
      const varied = spreads.flatMap((spread, index) => (spread > 0 ? [index] : []));
      const inputs = varied.map((index) => typed[index] as number);
      const ofReadings = spreadOf(
        (values) =>
          answerOrNone(() =>
            ask(
              descriptor,
              typed.map((cell, index) => (varied.includes(index) ? values[varied.indexOf(index)] : cell)),
            ),
          ),
        inputs,
        varied.map((index) => spreads[index] ?? 0),
      );
      return Math.hypot(ofReadings, ofTheEquation(descriptor, typed));
    },
  });

/** The equation's own ±, in the unit in which the answer stands. */
function ofTheEquation({ modelSpread, parameters, result }: AnyDescriptor, typed: readonly unknown[]): number {
  if (modelSpread === undefined || result.kind !== "number") return 0;
  const at = Object.keys(parameters as object).indexOf("units");
  const units = String(typed[at]).trim().toLowerCase() === "us" ? "us" : "metric";
  const { fromCore } = quantity(result.quantity);
  return fromCore(modelSpread.plusOrMinus, units) - fromCore(0, units);
}

/** Beyond a limit, or where a value does not exist, there is no answer. */
function answerOrNone(answer: () => number | ""): number | undefined {
  try {
    const value = answer();
    return value === "" ? undefined : value;
  } catch (problem) {
    if (problem instanceof ArgumentProblem) return undefined;
    throw problem;
  }
}
