import fc from "fast-check";
import { beforeAll, expect, test } from "vitest";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { share } from "../../support/drawn";
import { openTestBench, START_TIMEOUT } from "../support/test-bench";

/**
 * What the engine keeps between calculations must not be seen: after any edits, every cell shows what it shows when the
 * same workbook is opened anew and everything is calculated from nothing.
 *
 * Not drawn is what the engine gets wrong by itself, with nothing kept (the same steps fail without keep-dependencies): a LET of a name
 * that does not exist is #NAME? when entered and a number when opened; a name that stands for a calculation is now and then
 * #VALUE!, also when all is calculated from nothing.
 */
const cell = fc.tuple(fc.constantFrom("A", "B", "C"), fc.integer({ min: 1, max: 6 })).map(([column, row]) => `${column}${row}`);
const dataCell = fc.tuple(fc.constantFrom("A", "B"), fc.integer({ min: 1, max: 5 })).map(([column, row]) => `${column}${row}`);
/** Formulas of the sheet read rows above their own, and the data sheet, so that none reads itself. */
const formula = fc.oneof(
  fc.tuple(cell, cell).map(([one, other]) => `=${one}+${other}`),
  dataCell.map((one) => `=Data!${one}*2`),
  fc.constantFrom("=SUM(A1:B6)", "=SUM(Data!A:A)", '=SUM(Data!$A$1:$B$5)&""', "=COUNT(Data!B:B)", "=MAX(A1:C3)"),
  dataCell.map((one) => `=INDEX(Data!A1:B5,MIN(5,MAX(1,ROUND(ABS(N(Data!${one})),0))),1)`),
  fc.constantFrom("=pace*2", "=pace+late", "=SUM(block)", "=IF(late>2,pace,0)", "=SUM(Spilled!A1:C3)", "=Spilled!B2*2"),
  fc.constantFrom("=GYLE.SEE(pace)", "=GYLE.GAP(A1,B1)", "=GYLE.SEE(Data!A1:A3)"),
  fc.constantFrom("=OFFSET(Data!A1,1,0)", "=SUM(OFFSET(Data!A1,0,0,3,2))", "=OFFSET(A1,Data!B1,0)", "=SUM(A1:OFFSET(A1,2,Data!A1))"),
  fc.constantFrom('=INDIRECT("A2")', '=INDIRECT("A"&(Data!A1+1))', '=SUM(INDIRECT("B1:B"&(Data!B2+1)))', '=SUM(INDIRECT("Spilled!A1:C4"))'),
  fc.constantFrom(
    "=SUM(A1:INDEX(A1:A6,Data!A2+1))",
    "=SUM(Data!A1:INDEX(Data!A:A,Data!B1+1))",
    "=COUNTA(Spilled!A1:INDEX(Spilled!C1:C9,Data!A1+1))",
  ),
  fc.constantFrom(
    "=SUM(Spilled!A1#)",
    "=COUNTA(Spilled!B:B)",
    "=Spilled!A3",
    '=IFERROR(SUM(Spilled!A1:C9),"error")',
    "=COUNT(Spilled!A1:C12)",
  ),
);
/** The formulas' own rows: below everything that they read on the sheet. */
const formulaCell = fc
  .tuple(fc.constantFrom("A", "B", "C", "D", "E"), fc.integer({ min: 8, max: 13 }))
  .map(([column, row]) => `${column}${row}`);

type SheetId = "Sheet1" | "Data" | "Spilled";
type Step =
  | { do: "value"; sheet: SheetId; at: string; value: number | string | null }
  | { do: "formula"; at: string; formula: string }
  | { do: "spill"; at: string; formula: string }
  | { do: "empty"; at: string }
  | { do: "insert rows" | "delete rows" | "insert columns" | "delete columns"; sheet: SheetId; at: number }
  | { do: "to front"; sheet: SheetId }
  | { do: "name"; name: string; refersTo: string }
  | { do: "delete name"; name: string }
  | { do: "rename sheet" | "add sheet" | "delete sheet" | "undo" | "redo" };

const sheet = fc.constantFrom<SheetId>("Sheet1", "Data");
const anySheet = fc.constantFrom<SheetId>("Sheet1", "Data", "Spilled");
const step: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.record({
      do: fc.constant("value" as const),
      sheet: fc.constant("Data" as const),
      at: dataCell,
      value: fc.oneof({ weight: 6, arbitrary: fc.integer({ min: 0, max: 5 }) }, { weight: 1, arbitrary: fc.constantFrom("x", null) }),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      do: fc.constant("value" as const),
      sheet: fc.constant("Spilled" as const),
      at: fc.constantFrom("K1", "K2", "K3", "A2", "D2"),
      value: fc.constantFrom(3, null),
    }),
  },
  {
    weight: 3,
    arbitrary: fc.record({
      do: fc.constant("value" as const),
      sheet: fc.constant("Sheet1" as const),
      at: cell,
      value: fc.integer({ min: 0, max: 5 }),
    }),
  },
  { weight: 9, arbitrary: fc.record({ do: fc.constant("formula" as const), at: formulaCell, formula }) },
  {
    weight: 2,
    arbitrary: fc.record({
      do: fc.constant("spill" as const),
      // So far apart that only one below can be in another's way: of two that cross, whichever comes first has the cells.
      at: fc.constantFrom("A1", "A3", "D1", "D4", "G1"),
      formula: fc.oneof(
        dataCell.map((one) => `=SEQUENCE(MIN(3,MAX(1,ROUND(ABS(N(Data!${one})),0))))`),
        // An error where the cell holds nothing, a text or nought.
        dataCell.map((one) => `=SEQUENCE(Data!${one})`),
        dataCell.map((one) => `=SEQUENCE(3,2)/(Data!${one}-2)`),
        fc.constantFrom("=Data!A1:B3", "=Data!A1:A4*2", "=FILTER(Data!A1:A5,Data!A1:A5>1)", "=IF(Data!A1:A3>1,Sheet1!A1,Data!B1:B3)"),
        fc.constantFrom("=K1:K3+1", "=SEQUENCE(COUNT(K1:K3))", "=1/0", "=GYLE.STEPS(Data!A1)"),
      ),
    }),
  },
  { weight: 2, arbitrary: fc.record({ do: fc.constant("empty" as const), at: formulaCell }) },
  {
    weight: 3,
    arbitrary: fc.record({
      do: fc.constantFrom("insert rows" as const, "insert columns" as const),
      sheet: anySheet,
      at: fc.integer({ min: 0, max: 4 }),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      do: fc.constant("delete rows" as const),
      sheet: fc.constantFrom("Data" as const, "Spilled" as const),
      at: fc.integer({ min: 0, max: 5 }),
    }),
  },
  // On their own sheet formulas must stay below what they read, or a text that leads to a cell may come to lead to itself.
  { weight: 1, arbitrary: fc.record({ do: fc.constant("delete rows" as const), sheet, at: fc.integer({ min: 6, max: 11 }) }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constant("to front" as const), sheet: anySheet }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constant("delete columns" as const), sheet, at: fc.integer({ min: 3, max: 5 }) }) },
  {
    weight: 3,
    arbitrary: fc.record({
      do: fc.constant("name" as const),
      name: fc.constantFrom("pace", "late", "block"),
      refersTo: fc.constantFrom("Data!$A$1", "Data!$B$2", "Data!$A$1:$A$3", "3"),
    }),
  },
  { weight: 1, arbitrary: fc.record({ do: fc.constant("delete name" as const), name: fc.constantFrom("pace", "late", "block") }) },
  {
    weight: 4,
    arbitrary: fc.constantFrom<Step>(
      { do: "rename sheet" },
      { do: "add sheet" },
      { do: "delete sheet" },
      { do: "undo" },
      { do: "undo" },
      { do: "redo" },
    ),
  },
);

/** What drawn sequences once came down to: spills in the way of one that has no room, and one of them that becomes an error. */
const onceFound: readonly Step[][] = [
  [
    { do: "spill", at: "A3", formula: "=SEQUENCE(COUNT(K1:K3))" },
    { do: "spill", at: "A1", formula: "=Data!A1:A4*2" },
  ],
  [
    { do: "spill", at: "A3", formula: "=SEQUENCE(MIN(3,MAX(1,ROUND(ABS(N(Data!B2)),0))))" },
    { do: "spill", at: "A1", formula: "=IF(Data!A1:A3>1,Sheet1!A1,Data!B1:B3)" },
    { do: "delete rows", sheet: "Data", at: 1 },
  ],
  [
    { do: "spill", at: "D1", formula: "=SEQUENCE(MIN(3,MAX(1,ROUND(ABS(N(Data!B2)),0))))" },
    { do: "insert columns", sheet: "Spilled", at: 1 },
    { do: "spill", at: "D1", formula: "=SEQUENCE(3,2)/(Data!A4-2)" },
    { do: "value", sheet: "Data", at: "B2", value: 3 },
  ],
];

/** A workbook that is edited, and one that is opened anew from it. */
interface Pair {
  readonly edited: HeadlessBench;
  readonly fresh: HeadlessBench;
  readonly mark: string;
}

/** The grid waits a tenth of a second for more edits before it calculates; side by side they wait at the same time. */
const side = 12;
let pairs: Pair[];
beforeAll(async () => {
  pairs = [];
  for (let one = 0; one < side; one++)
    pairs.push({ edited: await openTestBench(), fresh: await openTestBench(), mark: `of_${String.fromCharCode(97 + one)}` });
}, 4 * START_TIMEOUT);

test("after drawn edits, insertions, deletions, names, sheets and undo a workbook shows what it shows when calculated from nothing", async () => {
  const sequences = [...onceFound, ...fc.sample(fc.array(step, { minLength: 8, maxLength: 24 }), Math.ceil(48 * share))];
  await Promise.all(
    pairs.map(async (pair) => {
      for (let steps = sequences.pop(); steps; steps = sequences.pop()) await take(pair, steps);
    }),
  );
}, 900_000);

test("what leads somewhere by a text, a distance or a calculated end is calculated again whenever that changes", async () => {
  const { edited: bench } = pairs[0]!;
  await bench.load(startingWorkbook());
  const sheet = (name: string) => bench.univerAPI.getActiveWorkbook()!.getSheetByName(name)!;
  const formulas = {
    A1: '=INDIRECT("Data!A2")',
    A2: '=SUM(INDIRECT("Data!A1:A"&Data!B1))',
    A3: "=OFFSET(Data!A1,Data!B1,0)",
    A4: "=SUM(Data!A1:INDEX(Data!A:A,Data!B1))",
    A5: "=SUM(Data!A1:OFFSET(Data!A1,Data!C1,0))",
    A6: "=A5*2",
  };
  for (const [cell, f] of Object.entries(formulas)) sheet("Sheet1").getRange(cell).setValue({ f });
  sheet("Data").getRange("C1").setValue({ f: "=B1-1" });
  const values = async () => {
    await bench.calculate();
    return Object.keys(formulas).map((cell) => bench.valueAt("Sheet1", cell));
  };
  // Data holds 1, 3, 5 in column A and 2, 4, 1 in B; C1 is one less than B1.
  expect(await values()).toEqual([3, 4, 5, 4, 4, 8]);
  sheet("Data").getRange("A2").setValue(30);
  expect(await values()).toEqual([30, 31, 5, 31, 31, 62]);
  sheet("Data").getRange("B1").setValue(3);
  expect(await values()).toEqual([30, 36, null, 36, 36, 72].map((value) => value ?? 0));
  sheet("Data").insertRows(0, 1);
  // The texts lead where they led: A2 is what A1 was, and B1 is gone to B2; the references have moved with their cells.
  expect(await values()).toEqual([1, 31, 0, 31, 36, 72]);
});

async function take(pair: Pair, drawn: readonly Step[]): Promise<void> {
  // A formula that the engine has read once, it knows by its text alone, in all workbooks: names are each pair's own.
  let steps = JSON.parse(JSON.stringify(drawn).replace(/\b(?:pace|late|block)\b/gu, `$&${pair.mark}`)) as Step[];
  let different = await differences(pair, steps);
  if (different === undefined) return;
  for (let at = steps.length - 1; at >= 0; at--) {
    const fewer = steps.filter((_, index) => index !== at);
    const still = await differences(pair, fewer);
    if (still !== undefined) [steps, different] = [fewer, still];
  }
  const [kept, fromNothing] = different;
  expect(kept, JSON.stringify(steps)).toEqual(fromNothing);
}

/** What a workbook shows, and what it shows when opened anew, where that is not the same after one of the steps. */
async function differences({ edited, fresh }: Pair, steps: readonly Step[]): Promise<[object, object] | undefined> {
  await edited.load(startingWorkbook());
  for (const [index, one] of steps.entries()) {
    await takeStep(edited, one);
    await edited.calculate();
    if (index % 4 !== 3 && index !== steps.length - 1) continue;
    const kept = shown(edited);
    await fresh.load({ ...structuredClone(edited.snapshot()), id: anyId() });
    const fromNothing = shown(fresh);
    if (JSON.stringify(kept) !== JSON.stringify(fromNothing)) return [kept, fromNothing];
  }
  return undefined;
}

/** The engine's caches of formulas and ranges are the whole process's, by the workbook's id. */
const anyId = () => `kept-${Math.random().toString(36).slice(2)}`;

function startingWorkbook() {
  const row = (...values: number[]) => Object.fromEntries(values.map((v, column) => [column, { v }]));
  const sheetOf = (id: string, name: string, cellData: object) => ({ id, name, cellData, rowCount: 40, columnCount: 30 });
  return {
    id: anyId(),
    sheetOrder: ["one", "data", "spilled"],
    sheets: {
      one: sheetOf("one", "Sheet1", { 0: row(1, 2, 3), 1: row(4, 5, 6), 7: { 3: { f: "=SUM(A1:C2)" } } }),
      data: sheetOf("data", "Data", { 0: row(1, 2), 1: row(3, 4), 2: row(5, 1) }),
      spilled: sheetOf("spilled", "Spilled", { 0: { 10: { v: 1 } }, 1: { 10: { v: 2 } } }),
    },
  } as unknown as Parameters<HeadlessBench["load"]>[0];
}

async function takeStep(bench: HeadlessBench, one: Step): Promise<void> {
  const workbook = bench.univerAPI.getActiveWorkbook()!;
  const data = () => sheetOf("Data");
  const ids = { Sheet1: "one", Data: "data", Spilled: "spilled" };
  const sheetOf = (name: SheetId) => workbook.getSheets().find((candidate) => candidate.getSheetId() === ids[name])!;
  switch (one.do) {
    case "value":
      if (one.value === null) sheetOf(one.sheet).getRange(one.at).clearContent();
      else sheetOf(one.sheet).getRange(one.at).setValue(one.value);
      break;
    case "formula":
    case "spill": {
      const sheet = sheetOf(one.do === "spill" ? "Spilled" : "Sheet1");
      sheet.getRange(one.at).setValue({ f: one.formula.replaceAll("Data!", `'${data().getSheetName()}'!`) });
      break;
    }
    case "empty":
      sheetOf("Sheet1").getRange(one.at).clearContent();
      break;
    case "insert rows":
      sheetOf(one.sheet).insertRows(one.at, 1);
      break;
    case "delete rows":
      sheetOf(one.sheet).deleteRows(one.at, 1);
      break;
    case "insert columns":
      sheetOf(one.sheet).insertColumns(one.at, 1);
      break;
    case "delete columns":
      sheetOf(one.sheet).deleteColumns(one.at, 1);
      break;
    case "to front":
      sheetOf(one.sheet).activate();
      break;
    case "name": {
      const known = workbook.getDefinedNames().find((candidate) => candidate.getName() === one.name);
      const refersTo = one.refersTo.replaceAll("Data!", `'${data().getSheetName()}'!`);
      if (known) known.setFormula(refersTo);
      else workbook.insertDefinedName(one.name, refersTo);
      break;
    }
    case "delete name":
      workbook
        .getDefinedNames()
        .find((candidate) => candidate.getName() === one.name)
        ?.delete();
      break;
    case "rename sheet":
      data().setName(data().getSheetName() === "Data" ? "Data 2" : "Data");
      break;
    case "add sheet":
      if (!workbook.getSheetByName("More")) workbook.insertSheet("More");
      break;
    case "delete sheet": {
      const more = workbook.getSheetByName("More");
      if (more) workbook.deleteSheet(more);
      break;
    }
    case "undo":
      await bench.univerAPI.undo();
      break;
    case "redo":
      await bench.univerAPI.redo();
      break;
  }
}

function shown(of: HeadlessBench): Record<string, unknown> {
  const found: Record<string, unknown> = {};
  for (const sheet of of.univerAPI.getActiveWorkbook()!.getSheets()) {
    for (let row = 0; row < 24; row++) {
      for (let column = 0; column < 10; column++) {
        const range = sheet.getRange(row, column);
        const value = of.valueAt(sheet.getSheetName(), range.getA1Notation());
        if (value !== null) found[`${sheet.getSheetName()}!${range.getA1Notation()} ${range.getFormula()}`] = value;
      }
    }
  }
  return found;
}
