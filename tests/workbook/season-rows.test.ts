import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { copies } from "../../src/workbook/batch/read/copied-sheets";
import { moved } from "../../src/workbook/sheets/season/own-cells";
import { columns } from "../../src/workbook/sheets/season/season-columns";
import { planSeason } from "../../src/workbook/sheets/season/season-plan";
import { mergeRows, type PresentRow } from "../../src/workbook/sheets/season/season-rows";
import { sheetOfName, sheetPrefix } from "../../src/workbook/grid/words/sheet-reference";

const present = (sheetName: string | undefined, id: string, remark = "", lastName = sheetName ?? "gone"): PresentRow => ({
  sheetName,
  id,
  lastName,
  left: "",
  remark,
  own: [],
  settled: true,
});
const sheet = (sheetName: string, id: string) => ({ sheetName, id });

describe("the list of batches", () => {
  it("follows the order of the tabs, and what was typed goes with its batch", () => {
    const { rows, added, kept, dropped } = mergeRows(
      [present("A", "a", "mine"), present("B", "b", "yours")],
      [sheet("B", "b"), sheet("C", "c"), sheet("A", "a")],
    );
    expect(rows.map(({ sheetName, remark }) => [sheetName, remark])).toEqual([
      ["B", "yours"],
      ["C", ""],
      ["A", "mine"],
    ]);
    expect({ added, kept, dropped }).toEqual({ added: ["C"], kept: [], dropped: [] });
  });

  it("lets a deleted batch go, unless something was typed beside it", () => {
    const { rows, kept, dropped } = mergeRows([present("A", "a"), { ...present(undefined, "b", "the best one", "B"), settled: false }], []);
    expect(rows).toEqual([{ sheetName: undefined, id: "b", lastName: "B", left: "", remark: "the best one", own: [] }]);
    expect({ kept, dropped }).toEqual({ kept: ["B"], dropped: ["A"] });
  });

  it("gives a batch that comes back its remark again, by its mark", () => {
    const { rows, added, kept } = mergeRows([present(undefined, "b", "the best one")], [sheet("Other", "x"), sheet("B again", "b")]);
    expect(rows.map(({ sheetName, remark }) => [sheetName, remark])).toEqual([
      ["Other", ""],
      ["B again", "the best one"],
    ]);
    expect(added).toEqual(["Other", "B again"]);
    expect(kept).toEqual([]);
  });

  it("keeps the remark at the original where a copy carries the same mark, and names both", () => {
    const sheets = [sheet("A (2)", "a"), sheet("A", "a"), sheet("Old", ""), sheet("Older", "")];
    expect(mergeRows([present("A", "a", "mine")], sheets).rows.map(({ remark }) => remark)).toEqual(["", "mine", "", ""]);
    expect(copies(sheets)).toEqual([["A (2)", "A"]]);
  });

  it("loses nothing that was typed, whatever comes, goes and moves; and a second time changes nothing", () => {
    const names = fc.uniqueArray(fc.constantFrom("A", "B", "C", "D", "E", "F"), { maxLength: 6 });
    fc.assert(
      fc.property(names, names, (before, after) => {
        const list = before.map((name) => present(name, name.toLowerCase(), `about ${name}`));
        const sheets = after.map((name) => sheet(name, name.toLowerCase()));
        const { rows } = mergeRows(list, sheets);
        for (const name of before) expect(rows.filter(({ remark }) => remark === `about ${name}`)).toHaveLength(1);
        expect(rows.slice(0, after.length).map(({ sheetName }) => sheetName)).toEqual(after);
        const again = mergeRows(
          rows.map((row) => ({ ...row, settled: true })),
          sheets,
        );
        expect(again.rows).toEqual(rows);
        expect([again.added, again.kept, again.dropped]).toEqual([[], [], []]);
      }),
    );
  });
});

describe("a reference to a name of another sheet", () => {
  it.each(["Batch 1", "It's mine", "B", "2026-03", "ümlaut & co", "a!b"])("%j there and back", (name) =>
    expect(sheetOfName(`=IFERROR(IF(${sheetPrefix(name)}batch_name="","",1),2)`, "batch_name")).toBe(name),
  );
  it.each([
    ['=IF(Batch7!batch_name="",1,2)', "Batch7"],
    ["=#REF!batch_name", undefined],
    ["=batch_name", undefined],
    ["='Batch 7'!batch_names", undefined],
  ])("%s", (formula, name) => expect(sheetOfName(formula, "batch_name")).toBe(name));
});

describe("a formula of the brewer's beside a batch", () => {
  it("speaks of its own row wherever it moves", () => {
    expect(moved.down(moved.up("=P25*2+$A$1", "AA25"), "AA31")).toBe("=P31*2+$A$1");
    expect(moved.down(moved.up("words", "AA25"), "AA31")).toBe("words");
  });
});

describe("the plan of the season sheet", () => {
  const plan = planSeason({ sheetName: "Season", units: "metric", today: 46310, rows: [present("Batch 1", "a")] });
  it("calls no worksheet function of ours: it costs nothing beside the batch sheets", () => {
    expect(plan.cells.filter(({ content }) => String(content).includes("GYLE."))).toEqual([]);
    expect(plan.cells.filter(({ content }) => String(content).startsWith("=")).length).toBeGreaterThan(80);
  });
  it("names nothing that Excel reads as a cell address, and uses only its own names and those of batch sheets", () => {
    for (const { name } of plan.names) expect(name).toMatch(/^(gylebook_)?season/);
  });
  it("has its columns in order, without gaps", () => {
    expect(columns.map(({ letter }) => letter)).toEqual([..."ABCDEFGHIJKLMNOPQRSTUVWXY"]);
  });
});
