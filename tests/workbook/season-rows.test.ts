import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { columnLetters } from "../../src/workbook/grid/plan/addresses";
import { copies } from "../../src/workbook/batch/read/copied-sheets";
import { atNewPlaces, moved } from "../../src/workbook/sheets/season/own-cells";
import { columns, keptColumns, lastColumn } from "../../src/workbook/sheets/season/season-columns";
import { plannedFirstRow, planSeason } from "../../src/workbook/sheets/season/season-plan";
import { mergeRows, type PresentRow, yearOf } from "../../src/workbook/sheets/season/season-rows";
import type { CellContent } from "../../src/workbook/grid/plan/sheet-plan";
import { sheetOfName, sheetPrefix } from "../../src/workbook/grid/words/sheet-reference";

/** Of what is kept, all that matters here: the name, the day, and whether it was brewed. */
const figures = (name: string, day: number | "", state: string): CellContent[] =>
  keptColumns.map(({ letter }) => (letter === "B" ? name : letter === "D" ? day : letter === "E" ? state : ""));
const present = (
  sheetName: string | undefined,
  id: string,
  remark = "",
  lastName = sheetName ?? "gone",
  kept: readonly CellContent[] = [],
): PresentRow => ({
  sheetName,
  id,
  lastName,
  left: "",
  remark,
  own: [],
  settled: true,
  letGo: false,
  closed: "",
  kegCell: false,
  hasParts: false,
  kept,
  shown: kept,
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
    expect(rows).toMatchObject([{ sheetName: undefined, id: "b", lastName: "B", left: "", remark: "the best one", own: [] }]);
    expect({ kept, dropped }).toEqual({ kept: ["B"], dropped: ["A"] });
  });

  it("keeps a deleted batch that was brewed, with its figures, and lets one go that was only planned or whose name was emptied", () => {
    const brewed = figures("Bitter", 46000, "ready");
    const { rows, kept, dropped } = mergeRows(
      [
        { ...present(undefined, "a", "", "A", brewed), settled: false },
        { ...present(undefined, "b", "", "B", figures("Idea", 46000, "planned")), settled: false },
        { ...present(undefined, "c", "", "C", brewed), letGo: true },
      ],
      [],
    );
    expect(rows.map(({ lastName, kept: figuresKept }) => [lastName, figuresKept])).toEqual([["A", brewed]]);
    expect({ kept, dropped }).toEqual({ kept: ["A"], dropped: ["B", "C"] });
    // Day number 46000 is 2025-12-09.
    expect(rows.map(yearOf)).toEqual([2025]);
  });

  it("keeps the figures of a closed year as they were closed, whatever its sheet shows now", () => {
    const [then, now] = [figures("Bitter", 46000, "ready"), figures("Bitter", 46001, "ready")];
    const row = (closed: number | ""): PresentRow => ({ ...present("A", "a", "", "A", then), shown: now, closed });
    expect(mergeRows([row(2025)], [sheet("A", "a")]).rows[0]!.kept).toEqual(then);
    expect(mergeRows([row("")], [sheet("A", "a")]).rows[0]!.kept).toEqual(now);
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
          rows.map((row) => ({ ...row, settled: true, letGo: false, shown: row.kept })),
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

describe("what the brewer wrote beside a batch on a sheet of the first plan", () => {
  it.each([
    ["=P25*2", 0, "=P41*2"],
    ["=R25/Q25", 0, "=S41/Q41"],
    ["=$V25&AB25", 1, "=$W41&BC41"],
    ["=SUM(AA25:AB25)", 2, "=SUM(BB41:BC41)"],
    ["'R25'!A25+1", 0, "'R25'!A25+1"],
    ["=N('My R25'!R25)", 0, "=N('My R25'!R41)"],
  ])("%s", (formula, offset, now) => {
    const [was, is] = [columnLetters(27 + offset), columnLetters(54 + offset)];
    expect(moved.down(atNewPlaces(moved.up(formula, `${was}25`), offset), `${is}41`)).toBe(now);
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
    expect(columns.map(({ letter }) => letter)).toEqual(columns.map((_, index) => columnLetters(index + 1)));
    expect(columns.at(-1)!.letter).toBe(lastColumn);
  });
  it("takes sixty batches: each its own row in the order of the tabs, with what was typed beside it, and all of them on paper", () => {
    // Names of all that a tab may be called: from right to left, 31 letters, with signs that a reference must quote.
    const called = (index: number) =>
      [`قصب ${index}`, `Quillmarsh midsummer harvest ${String(index).padStart(2, "0")}`, `It's no. ${index}`][index % 3]!;
    const tabs = Array.from({ length: 60 }, (_, index) => sheet(called(index), `id${index}`));
    const asTyped = tabs.map(({ sheetName, id }, index) => present(sheetName, id, `remark ${index}`));
    const { rows, added, dropped } = mergeRows(asTyped, tabs.toReversed());
    expect([added, dropped]).toEqual([[], []]);
    const { cells, print } = planSeason({ sheetName: "Season", units: "metric", today: 46310, rows });
    for (const [line, { sheetName }] of tabs.toReversed().entries()) {
      const row = plannedFirstRow + line;
      const inRow = cells.filter(({ address }) => new RegExp(`^[A-Z]+${row}$`).test(address)).map(({ content }) => String(content));
      expect(inRow, sheetName).toContain(`remark ${59 - line}`);
      expect(inRow.filter((content) => content.includes(sheetPrefix(sheetName))).length, sheetName).toBeGreaterThan(10);
      const others = tabs.filter(
        (tab) => tab.sheetName !== sheetName && inRow.some((content) => content.includes(sheetPrefix(tab.sheetName))),
      );
      expect(others, sheetName).toEqual([]);
    }
    expect(print.area.split(":")[1]).toMatch(new RegExp(`^[A-Z]+${plannedFirstRow + 59}$`));
  });
});
