import { call } from "../../functions/call";
import type { AnyDescriptor, Parameter } from "../../functions/describe";
import { functionNamed, registry } from "../../functions/registry";
import { processorMicroseconds } from "./microseconds";
import type { BenchRow } from "./row";
import { shippedFunctions } from "./shipped-functions";

const rows = 5000;
/** Excel's height, of which so many cells are filled. */
const height = 1_048_576;
const filled = 50;

/** The fastest of several runs, in microseconds of processor time: what else the machine does only adds. */
function fastest(work: () => unknown, runs: number): number {
  let best = Infinity;
  for (let run = 0; run < runs; run++) {
    const before = processorMicroseconds();
    work();
    best = Math.min(best, processorMicroseconds() - before);
  }
  return best;
}

interface Cost {
  readonly id: string;
  /** µs a row that the formula takes by itself, and that the wrapper adds. */
  readonly formula: number;
  readonly added: number;
}

/** What the call wrapper adds to a row of a column, over the formula alone; undefined for functions of tables, lists and words. */
function overTheFormula(descriptor: AnyDescriptor): Cost | undefined {
  const parameters = Object.values(descriptor.parameters as Record<string, Parameter>);
  const typed = parameters.map((_, index) => descriptor.examples[0]?.arguments[index] ?? null);
  if (descriptor.result.kind !== "number" || parameters.some(({ kind }) => kind !== "number" && kind !== "choice")) return undefined;
  // Every number a column of its own, no row like the one above it.
  const columns = typed.map((value, at) =>
    typeof value === "number" && value !== 0 && parameters[at]?.kind === "number"
      ? Array.from({ length: rows }, (_, row) => [value * (1 - 1e-7 * (row % 7))])
      : value,
  );
  const seen: Parameters<AnyDescriptor["compute"]>[] = [];
  const watched: AnyDescriptor = {
    ...descriptor,
    compute: (values, context) => (seen.push([{ ...values }, context]), descriptor.compute(values, context)),
  };
  call(watched, columns);
  const formula = () => seen.reduce((sum, [values, context]) => sum + Number(descriptor.compute(values, context)), 0);
  const alone = fastest(formula, 15) / rows;
  return { id: descriptor.id, formula: alone, added: fastest(() => call(descriptor, columns), 15) / rows - alone };
}

const target = 0.5;
/** µs: a formula that takes longer drowns what the wrapper adds in its own scatter, a tenth of it from run to run. */
const longest = 8 * target;

export const callCosts: readonly BenchRow[] = [
  {
    what: "what the wrapper adds to a row of a lifted call, over the bare formula: the dearest function of plain numbers",
    target: `${target} µs or less`,
    measure: () => {
      const all = registry.flatMap((descriptor) => overTheFormula(descriptor) ?? []);
      const costs = all.filter(({ formula }) => formula <= longest).sort((one, other) => other.added - one.added);
      const slow = all.filter((one) => !costs.includes(one)).map(({ id }) => id);
      const [dearest] = costs;
      if (dearest === undefined) throw new Error("no function of plain numbers");
      const middle = costs[Math.floor(costs.length / 2)]?.added ?? 0;
      return {
        measured: `${dearest.added.toFixed(2)} µs (${dearest.id}; the middle one of ${costs.length}: ${middle.toFixed(2)} µs; left out, since the formula alone takes more than ${longest} µs: ${slow.join(", ") || "none"})`,
        met: dearest.added <= target,
      };
    },
  },
  {
    what: `two whole columns, ${height} rows of which ${filled} are filled, in the file that ships: BEER.ABV row by row, WORT.MIX of lists`,
    target: "under 1 s each",
    measure: () => {
      const shipped = shippedFunctions();
      const column = (value: number) => Array.from({ length: height }, (_, row) => [row < filled ? value : 0]);
      const [seconds, lists] = ["BEER.ABV", "WORT.MIX"].map((id) => {
        const worksheetFunction = shipped[functionNamed(id).id];
        if (worksheetFunction === undefined) throw new Error(`${id} is not in dist/functions.js`);
        const columns = [column(1.05), column(1.01)];
        return fastest(() => worksheetFunction(...columns), 3) / 1e6;
      }) as [number, number];
      return { measured: `${seconds.toFixed(2)} s and ${lists.toFixed(2)} s`, met: seconds < 1 && lists < 1 };
    },
  },
];
