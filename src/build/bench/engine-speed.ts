import { createRequire } from "node:module";
import path from "node:path";
import type * as Headless from "../../excel-stand-in/headless";
import { root } from "../run.mjs";
import { median, microsecondsPer, processorMicroseconds } from "./microseconds";
import type { BenchRow } from "./row";
import { built, shippedFunctions } from "./shipped-functions";

const rows = 10_000;
/** The native sum costs so much more that fewer cells of it tell as well. */
const nativeRows = 1_000;
/** BEER.ABV written out in native functions, of the gravities in columns A and B: what a sheet would hold without us. */
const plato = (cell: string): string => `(258.6*(${cell}-1)-226.12*(${cell}-1)^2+175.45*(${cell}-1)^3)`;
const nativeSum = (row: number): string =>
  `=0.8192*(${plato(`A${row}`)}-${plato(`B${row}`)})/(2.0665-0.010665*${plato(`A${row}`)})*B${row}/0.791`;
const scalarCall = (row: number): string => `=GYLE.BEER.ABV(A${row},B${row})`;

interface EngineTimes {
  /** Microseconds of calculating one cell again; below, milliseconds for all rows. Entering the new readings is taken off. */
  readonly nativeCell: number;
  readonly scalar: number;
  readonly lifted: number;
  /** As many cells spilled by the engine from a native formula that does next to nothing. */
  readonly nativeSpill: number;
}

let measured: Promise<EngineTimes> | undefined;
const engineTimes = (): Promise<EngineTimes> => (measured ??= measureEngine());

async function measureEngine(): Promise<EngineTimes> {
  const { createHeadlessBench } = createRequire(import.meta.url)(path.join(root, "dist/headless.cjs")) as typeof Headless;
  const bench = createHeadlessBench({
    metadata: JSON.parse(built("functions.json")) as Headless.HeadlessOptions["metadata"],
    functionsScript: built("functions.js"),
  });
  const enter = async (address: string, formulas: (string | number)[][]): Promise<number> => {
    const started = processorMicroseconds();
    await bench.Excel.run(async (context) => {
      context.workbook.worksheets.getItem("Sheet1").getRange(address).formulas = formulas;
      await context.sync();
    });
    await bench.calculate();
    return (processorMicroseconds() - started) / 1000;
  };
  const column = (content: (row: number) => string | number, count = rows): (string | number)[][] =>
    Array.from({ length: count }, (_, index) => [content(index + 1)]);
  await enter(
    `B1:B${rows}`,
    column((row) => 1.008 + (row % 7) / 1000),
  );
  /** New readings in column A, and everything that hangs on them calculated again: formulas are read only once. */
  const recalculate = async (count: number): Promise<number> => {
    const runs: number[] = [];
    for (let run = 0; run < 4; run++)
      runs.push(
        await enter(
          `A1:A${count}`,
          column((row) => 1.04 + ((row + run) % 40) / 1000, count),
        ),
      );
    return median(runs.slice(1));
  };
  const withFormulas = async (address: string, formulas: (string | number)[][], count = rows): Promise<number> => {
    const without = await recalculate(count);
    await enter(address, formulas);
    const time = await recalculate(count);
    const last = bench.valueAt("Sheet1", `D${count}`);
    if (typeof last !== "number") throw new Error(`no number in row ${count}: ${String(last)}`);
    await enter(
      address,
      formulas.map(() => [""]),
    );
    return time - without;
  };
  const nativeCell = ((await withFormulas(`D1:D${nativeRows}`, column(nativeSum, nativeRows), nativeRows)) * 1000) / nativeRows;
  const scalar = await withFormulas(`D1:D${rows}`, column(scalarCall));
  const lifted = await withFormulas("D1", [[`=GYLE.BEER.ABV(A1:A${rows},B1:B${rows})`]]);
  const nativeSpill = await withFormulas("D1", [[`=A1:A${rows}*2`]]);
  bench.dispose();
  return { nativeCell, scalar, lifted, nativeSpill };
}

/** How the engine's time goes: our calls against native formulas, one lifted call against ten thousand. */
export const engineSpeed: readonly BenchRow[] = [
  {
    what: "scalar GYLE call through the wrapper, against the same sum as a native formula in the bench's engine",
    target: "1.0x or less",
    measure: async () => {
      const { nativeCell, scalar } = await engineTimes();
      const abv = shippedFunctions()["BEER.ABV"];
      if (abv === undefined) throw new Error("BEER.ABV is not in dist/functions.js");
      const wrapped = microsecondsPer(() => abv([[1.05]], [[1.01]], null, {}));
      // What the engine adds around our call is its own, and stands beside it: the native formula has it, too.
      const inCell = (scalar * 1000) / rows;
      return {
        measured: `${(wrapped / nativeCell).toFixed(2)}x (${wrapped.toFixed(1)} µs to ${nativeCell.toFixed(0)} µs; cell against cell ${(inCell / nativeCell).toFixed(2)}x, ${inCell.toFixed(0)} µs)`,
        met: wrapped <= nativeCell && inCell <= nativeCell,
      };
    },
  },
  {
    what: `one lifted call over ${rows} rows, against ${rows} scalar calls in the engine`,
    target: "20x faster or more",
    measure: async () => {
      const { scalar, lifted, nativeSpill } = await engineTimes();
      return {
        measured: `${(scalar / lifted).toFixed(0)}x (${lifted.toFixed(0)} ms to ${scalar.toFixed(0)} ms; the engine takes ${nativeSpill.toFixed(0)} ms to spill as many cells of a native formula)`,
        met: lifted > 0 && scalar / lifted >= 20,
        beyondEngine: scalar / nativeSpill < 20,
      };
    },
  },
];
