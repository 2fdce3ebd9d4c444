import { beforeEach, afterEach, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../../src/excel-stand-in/headless";
import { enter, openTestBench, START_TIMEOUT } from "../support/test-bench";

let bench: HeadlessBench;
beforeEach(async () => {
  bench = await openTestBench();
  const workbook = bench.univerAPI.getActiveWorkbook()!;
  workbook.getSheets()[0]!.setName("Batch 1");
  workbook.insertSheet("Batch 2");
  workbook.insertSheet("Season");
  for (const [name, og] of [
    ["Batch 1", 1050],
    ["Batch 2", 1080],
  ] as const) {
    await enter(bench, { A1: og, A2: og - 40 }, name);
    define("og", `'${name}'!$A$1`, name);
    define("fg", `'${name}'!$A$2`, name);
    define("drop", "=GYLE.GAP(og,fg)", name);
    await enter(bench, { C1: "=GYLE.GAP(og,fg)", C2: "=OG", C3: "=drop*half", C4: "=LET(og,5,og*2)" }, name);
  }
  define("half", "=1/2");
  await enter(
    bench,
    { A1: "='Batch 1'!og", A2: "='Batch 2'!og", A3: "=INDIRECT(\"'Batch 2'!og\")", A4: "=og", A5: "='Batch 1'!og-'Batch 2'!og" },
    "Season",
  );
}, START_TIMEOUT);
afterEach(() => bench.dispose());

const sheetNamed = (name: string) => bench.univerAPI.getActiveWorkbook()!.getSheetByName(name)!;
const at = (sheet: string, ...cells: string[]) => cells.map((cell) => bench.valueAt(sheet, cell));

function define(name: string, formulaOrRefString: string, sheetName?: string, id = `${name}@${sheetName}`): void {
  const localSheetId = sheetName === undefined ? "AllDefaultWorkbook" : sheetNamed(sheetName).getSheetId();
  const unitId = bench.univerAPI.getActiveWorkbook()!.getId();
  bench.univerAPI.syncExecuteCommand("sheet.command.set-defined-name", { unitId, id, name, formulaOrRefString, localSheetId });
}

describe("names that belong to a sheet", () => {
  it("give each sheet its own value, in any case, through other names, and hidden by LET", () => {
    expect(at("Batch 1", "C1", "C2", "C3", "C4")).toEqual([40, 1050, 20, 10]);
    expect(at("Batch 2", "C1", "C2", "C3", "C4")).toEqual([40, 1080, 20, 10]);
  });

  it("may stand behind a sign, wherever that stands", async () => {
    const formulas: [string, number][] = [
      ["=-og", -1050],
      ["= - og", -1050],
      ["=(-og)", -1050],
      ["=SUM(og,-fg)", 40],
      ["=1--og", 1051],
      ["=2*-half", -1],
      ["=10^(-half*2)", 0.1],
      ["=IF(TRUE,-drop,1)", -40],
      ["=og-fg", 40],
      ["=-'Batch 2'!og", -1080],
      ["=SUM(10^(-half*2*{1,2}))", 0.11],
    ];
    await enter(bench, Object.fromEntries(formulas.map(([formula], row) => [`E${row + 1}`, formula])), "Batch 1");
    const shown = at("Batch 1", ...formulas.map((_, row) => `E${row + 1}`));
    expect(shown).toEqual(formulas.map(([, value]) => expect.closeTo(value, 9)));
  });

  it("can be reached from another sheet, by name and through INDIRECT, but not unqualified", () => {
    expect(at("Season", "A1", "A2", "A3", "A4", "A5")).toEqual([1050, 1080, 1080, "#NAME?", -30]);
  });

  it("follow edits on their own sheet only", async () => {
    await enter(bench, { A1: 1060 }, "Batch 1");
    expect(at("Batch 1", "C1", "C2", "C3")).toEqual([50, 1060, 25]);
    expect(at("Batch 2", "C1", "C2", "C3")).toEqual([40, 1080, 20]);
    expect(at("Season", "A1", "A5")).toEqual([1060, -20]);
  });

  it("follow their cells when rows are inserted, and on undo", async () => {
    sheetNamed("Batch 1").insertRows(0, 3);
    await bench.calculate();
    await enter(bench, { A4: 1070 }, "Batch 1");
    expect(at("Batch 1", "C4", "C5")).toEqual([60, 1070]);
    await bench.univerAPI.undo();
    await bench.univerAPI.undo();
    await bench.calculate();
    expect(at("Batch 1", "C1", "C2")).toEqual([40, 1050]);
  });

  it("can be pointed elsewhere", async () => {
    define("og", "'Batch 1'!$A$2", "Batch 1");
    await bench.calculate();
    expect(at("Batch 1", "C1", "C2", "C3")).toEqual([0, 1010, 0]);
    expect(at("Season", "A1")).toEqual([1010]);
    await bench.univerAPI.undo();
    await bench.calculate();
    expect(at("Batch 1", "C1", "C2")).toEqual([40, 1050]);
  });

  it("win over a workbook's name of the same spelling, which is used where there is none", async () => {
    define("og", "=999");
    await bench.calculate();
    expect([...at("Season", "A4", "A1"), ...at("Batch 1", "C2")]).toEqual([999, 1050, 1050]);
  });

  it("keep working when their sheet is renamed, also where they are written with it", async () => {
    sheetNamed("Batch 1").setName("Pale Ale");
    await bench.calculate();
    expect(sheetNamed("Season").getRange("A1").getFormula()).toBe("='Pale Ale'!og");
    await enter(bench, { A1: 1062 }, "Pale Ale");
    expect([...at("Pale Ale", "C1", "C2"), ...at("Season", "A1", "A5")]).toEqual([52, 1062, 1062, -18]);
  });

  it("are found by formulas that were there before them, and followed to another spelling", async () => {
    await enter(bench, { B1: "=late", B2: "=wide+1" }, "Batch 2");
    await enter(bench, { B1: "='Batch 2'!late", B2: "=late" }, "Season");
    expect([...at("Batch 2", "B1", "B2"), ...at("Season", "B1", "B2")]).toEqual(["#NAME?", "#NAME?", "#NAME?", "#NAME?"]);
    define("late", "'Batch 2'!$A$2", "Batch 2");
    define("wide", "=late*2", "Batch 2");
    await bench.calculate();
    expect([...at("Batch 2", "B1", "B2"), ...at("Season", "B1", "B2")]).toEqual([1040, 2081, 1040, "#NAME?"]);
    define("later", "'Batch 2'!$A$2", "Batch 2", "late@Batch 2");
    await bench.calculate();
    expect(sheetNamed("Batch 2").getRange("B1").getFormula()).toBe("=later");
    // Another name that is calculated from it follows as well.
    const wide = bench.univerAPI
      .getActiveWorkbook()!
      .getDefinedNames()
      .find((one) => one.getName() === "wide");
    expect(wide?.getFormulaOrRefString()).toBe("=later*2");
    expect(at("Batch 2", "B1", "B2")).toEqual([1040, 2081]);
  });

  it("are found when a sheet of the name that a formula gives comes only later", async () => {
    await enter(bench, { C1: "='Batch 3'!og" }, "Season");
    const added = bench.univerAPI.getActiveWorkbook()!.insertSheet("Batch 3");
    await enter(bench, { A1: 1120 }, "Batch 3");
    define("og", "'Batch 3'!$A$1", "Batch 3");
    await bench.calculate();
    expect(at("Season", "C1")).toEqual([1120]);
    added.setName("Batch 4");
    await bench.calculate();
    await enter(bench, { A1: 1121 }, "Batch 4");
    expect([sheetNamed("Season").getRange("C1").getFormula(), ...at("Season", "C1")]).toEqual(["='Batch 4'!og", 1121]);
  });

  it("come along with a copied sheet, and go with it again on undo", async () => {
    const unitId = bench.univerAPI.getActiveWorkbook()!.getId();
    bench.univerAPI.syncExecuteCommand("sheet.command.copy-sheet", { unitId, subUnitId: sheetNamed("Batch 2").getSheetId() });
    const copy = bench.univerAPI.getActiveWorkbook()!.getSheets()[2]!;
    copy.setName("Batch 3");
    await enter(bench, { A1: 1100 }, "Batch 3");
    expect(at("Batch 3", "C1", "C2", "C3")).toEqual([60, 1100, 30]);
    expect(at("Batch 2", "C1", "C2", "C3")).toEqual([40, 1080, 20]);
    for (let step = 0; step < 3; step++) await bench.univerAPI.undo();
    expect(bench.univerAPI.getActiveWorkbook()!.getDefinedNames()).toHaveLength(7);
  });

  it("keep their value when their sheet is renamed and another deleted before anything is calculated", async () => {
    bench.univerAPI.getActiveWorkbook()!.insertSheet("Spare");
    await enter(bench, { A1: 1 }, "Spare");
    sheetNamed("Season").getRange("D1").setFormula("='Batch 1'!og+1");
    sheetNamed("Batch 1").setName("Pale Ale");
    bench.univerAPI.getActiveWorkbook()!.deleteSheet(sheetNamed("Spare"));
    await bench.calculate();
    expect([...at("Season", "A1", "A5", "D1"), ...at("Pale Ale", "C1", "C2")]).toEqual([1050, -30, 1051, 40, 1050]);
  });

  it("are followed when they are renamed, also where they are written with their sheet", async () => {
    define("gravity", "'Batch 1'!$A$1", "Batch 1", "og@Batch 1");
    await bench.calculate();
    expect(["A1", "A2", "A5"].map((cell) => sheetNamed("Season").getRange(cell).getFormula())).toEqual([
      "='Batch 1'!gravity",
      "='Batch 2'!og",
      "='Batch 1'!gravity-'Batch 2'!og",
    ]);
    expect(at("Season", "A1", "A2", "A5")).toEqual([1050, 1080, -30]);
    expect(["C1", "C2", "C4"].map((cell) => sheetNamed("Batch 1").getRange(cell).getFormula())).toEqual([
      "=GYLE.GAP(gravity,fg)",
      "=gravity",
      "=LET(og,5,og*2)",
    ]);
    // Another sheet's name of the same spelling is another name.
    expect(["C1", "C2"].map((cell) => sheetNamed("Batch 2").getRange(cell).getFormula())).toEqual(["=GYLE.GAP(og,fg)", "=OG"]);
    expect([...at("Batch 1", "C1", "C2"), ...at("Batch 2", "C1", "C2")]).toEqual([40, 1050, 40, 1080]);
    await bench.univerAPI.undo();
    await bench.calculate();
    expect(sheetNamed("Season").getRange("A1").getFormula()).toBe("='Batch 1'!og");
    expect(at("Season", "A1")).toEqual([1050]);
  });

  it("leave formulas as they are when they are deleted, so that those that mean another name go on", async () => {
    const unitId = bench.univerAPI.getActiveWorkbook()!.getId();
    bench.univerAPI.syncExecuteCommand("sheet.command.remove-defined-name", {
      ...bench.engine.names.find(unitId, sheetNamed("Batch 1").getSheetId(), "og"),
      unitId,
    });
    await bench.calculate();
    expect([...at("Batch 1", "C1"), ...at("Batch 2", "C1"), ...at("Season", "A1", "A2")]).toEqual(["#NAME?", 40, "#NAME?", 1080]);
    expect(sheetNamed("Batch 1").getRange("C1").getFormula()).toBe("=GYLE.GAP(og,fg)");
  });

  it("go with a deleted sheet", async () => {
    bench.univerAPI.getActiveWorkbook()!.deleteSheet(sheetNamed("Batch 2"));
    await bench.calculate();
    expect(bench.univerAPI.getActiveWorkbook()!.getDefinedNames()).toHaveLength(4);
    expect([...at("Season", "A2", "A1"), ...at("Batch 1", "C1")]).toEqual(["#REF!", 1050, 40]);
    // As in Excel: a sheet that is called the same later is another one.
    expect(["A2", "A5"].map((cell) => sheetNamed("Season").getRange(cell).getFormula())).toEqual(["=#REF!", "='Batch 1'!og-#REF!"]);
    await bench.univerAPI.undo();
    await bench.calculate();
    expect(sheetNamed("Season").getRange("A2").getFormula()).toBe("='Batch 2'!og");
    expect(at("Season", "A1", "A2", "A5")).toEqual([1050, 1080, -30]);
  });

  it("are in the snapshot and work when it is opened again", async () => {
    const snapshot = bench.snapshot();
    await bench.load(snapshot);
    await enter(bench, { A1: 1090 }, "Batch 2");
    expect([...at("Batch 1", "C1"), ...at("Batch 2", "C1", "C2"), ...at("Season", "A2")]).toEqual([40, 50, 1090, 1090]);
  });
});
