import { mkdirSync, writeFileSync } from "node:fs";
import { CellError } from "../../src/functions/cell-error";
import type * as Cards from "../sheets/by-hand/cards";
import type * as Plan from "../../src/workbook/batch/sheet/plan";
import type * as Paper from "../support/paper-grid";
import type { Kept } from "./collect";
import { allCoreMutants, type Mutant } from "./core-mutants";

/*
 * Judges: the core's own tests and the tables under tests/reference of the same place, then the cards calculated by
 * hand. Not: golden files, samples, and single tests that take longer than `longest` (they would cost hours).
 * GYLEBOOK_MUTATE=pack takes the files whose names hold "pack" only.
 */
declare global {
  interface ImportMeta {
    glob<T>(patterns: readonly string[]): Record<string, () => Promise<T>>;
  }
}
const { it, afterAll, vi } = globalThis as unknown as {
  it: (name: string, body: () => Promise<void>) => void;
  afterAll: (body: () => void) => void;
  vi: { resetModules(): void };
};
const shared = globalThis as { awake?: number; turn?: () => void; keptTests?: Kept[] } & typeof globalThis;
const [longest, mostTurns] = [1500, 3_000_000];
/** What was reached when this was written, rounded down: what survives is listed, and most of it changes nothing that shows. */
const leastKilled = 75;
const killers = import.meta.glob<unknown>(["../core/**/*.test.ts", "../reference/*/*.test.ts"]);
const place = (file: string): string => /(?:core|reference)\/([a-z]+)/.exec(file)?.[1] ?? "";

/** The tests of general mathematics are those of whatever uses it. */
const judgedBy = (of: string): readonly string[] => (of === "math" ? ["math", "log", "gauge"] : [of]);

async function load(of: string): Promise<Kept[]> {
  vi.resetModules();
  shared.keptTests = [];
  for (const [file, read] of Object.entries(killers)) if (judgedBy(of).includes(place(file))) await read();
  return shared.keptTests;
}

async function fails({ body }: Kept): Promise<boolean> {
  let turns = 0;
  shared.turn = () => {
    if ((turns += 1) > mostTurns) throw new Error("a loop that does not end");
  };
  try {
    await body();
    return false;
  } catch {
    return true;
  }
}

async function firstToFail(tests: readonly Kept[]): Promise<string | undefined> {
  for (const test of tests) if (await fails(test)) return test.name;
  return undefined;
}

/** What a module works out while it is loaded must be worked out again. */
async function failsLoadedAgain(file: string, names: ReadonlySet<string>): Promise<boolean> {
  const tests = await load(place(file)).catch(() => undefined);
  return tests === undefined || (await firstToFail(tests.filter(({ name }) => names.has(name)))) !== undefined;
}

/** Tests that are green without a mutant, the quick ones first. */
async function judges(tests: readonly Kept[]): Promise<Kept[]> {
  const timed: { test: Kept; took: number }[] = [];
  for (const test of tests) {
    const began = performance.now();
    if (!(await fails(test))) timed.push({ test, took: performance.now() - began });
  }
  return timed
    .filter(({ took }) => took < longest)
    .sort((one, other) => one.took - other.took)
    .map(({ test }) => test);
}

/** What the cards calculated by hand say against the sheet, with our functions as they are now. */
async function cardsSay(): Promise<string> {
  const [{ handCards, difference }, { planBatch }, { paperGrid }] = (await Promise.all([
    import("../sheets/by-hand/cards"),
    import("../../src/workbook/batch/sheet/plan"),
    import("../support/paper-grid"),
  ])) as [typeof Cards, typeof Plan, typeof Paper];
  return handCards()
    .flatMap(({ title, contents, lines }) => {
      const plan = planBatch(contents());
      const paper = paperGrid(plan);
      const shows = (cell: string): unknown => {
        const value = paper.at(cell);
        return value instanceof CellError ? value.code : value;
      };
      return lines.flatMap((line) => {
        try {
          return difference(plan, line, shows) ? [`${title} ${line.name}`] : [];
        } catch {
          return [`${title} ${line.name} !`];
        }
      });
    })
    .join("; ");
}

const wanted = process.env["GYLEBOOK_MUTATE"] ?? "";
const files = [...allCoreMutants()].filter(([file, { mutants }]) => mutants.length > 0 && file.includes(wanted));
const report: string[] = [];
let total = 0;
const left: Mutant[] = [];

for (const [file, { mutants }] of files) {
  it(file, async () => {
    delete shared.awake;
    let tests = await judges(await load(place(file)));
    const names = new Set(tests.map(({ name }) => name));
    const survivors: Mutant[] = [];
    for (const mutant of mutants) {
      shared.awake = mutant.id;
      const killer = mutant.whileLoading ? undefined : await firstToFail(tests);
      if (killer !== undefined) tests = [...tests.filter(({ name }) => name === killer), ...tests.filter(({ name }) => name !== killer)];
      else if (!(await failsLoadedAgain(file, names))) survivors.push(mutant);
      delete shared.awake;
    }
    const usual = survivors.length > 0 ? (vi.resetModules(), await cardsSay()) : "";
    for (const mutant of survivors) {
      shared.awake = mutant.id;
      vi.resetModules();
      let turns = 0;
      shared.turn = () => {
        if ((turns += 1) > mostTurns) throw new Error("a loop that does not end");
      };
      const said = await cardsSay().catch(() => "error");
      delete shared.awake;
      if (said !== usual) continue;
      left.push(mutant);
      report.push(`${mutant.file}:${mutant.line}  ${mutant.was}  →  ${mutant.is}`);
    }
    total += mutants.length;
  });
}

afterAll(() => {
  mkdirSync(".cache/mutants", { recursive: true });
  writeFileSync(".cache/mutants/core.txt", `${report.join("\n")}\n`);
  const killed = (100 * (total - left.length)) / total;
  console.log(
    `${report.join("\n")}\ncore: ${total} mutants, ${total - left.length} killed, ${left.length} survived (${killed.toFixed(1)} % killed); the list is in .cache/mutants/core.txt`,
  );
  if (wanted === "" && killed < leastKilled)
    throw new Error(`${killed.toFixed(1)} % of the slips were noticed; it were ${leastKilled} % before`);
});
