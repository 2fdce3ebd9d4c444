import { describe, expect, it } from "vitest";
import { openWorkbook, saveWorkbook, UnreadableFileError } from "../../../src/excel-stand-in/xlsx";
import { partText, type PackageParts } from "../../../src/excel-stand-in/xlsx/package-parts";
import { parseXml } from "../../../src/excel-stand-in/xlsx/xml";
import { packageProblems } from "./support/package-problems";
import { cellXml, goldenWith, replaceIn, textOf } from "./support/parts";

const SHEET = "xl/worksheets/sheet1.xml";

/** Puts cells into row 11 of golden.xlsx. */
const withCells = (xml: string): Uint8Array => goldenWith((parts) => replaceIn(parts, SHEET, /<row r="11"[^>]*>/, `$&${xml}`));
const utf16 = (text: string, bigEndian: boolean): Uint8Array => {
  const bytes = new Uint8Array(2 + text.length * 2);
  const view = new DataView(bytes.buffer);
  [..."\uFEFF", ...text].forEach((sign, index) => view.setUint16(index * 2, sign.charCodeAt(0), !bigEndian));
  return bytes;
};

async function refusal(bytes: Uint8Array): Promise<string> {
  const failure: unknown = await openWorkbook(bytes).catch((error: unknown) => error);
  expect(failure).toBeInstanceOf(UnreadableFileError);
  return (failure as Error).message;
}

describe("parts in other letters", () => {
  it.each([
    ["little", false],
    ["big", true],
  ])("UTF-16, %s end first, is read and saved again", async (_, bigEndian) => {
    const file = goldenWith((parts) => {
      replaceIn(parts, SHEET, "<t>FG</t>", "<t>Würze ½</t>");
      for (const path of [SHEET, "xl/workbook.xml", "xl/styles.xml", "[Content_Types].xml", "xl/_rels/workbook.xml.rels"]) {
        const text = partText(parts, path)!.replace(/encoding="UTF-8"/, 'encoding="UTF-16"');
        parts.set(path, utf16(text, bigEndian));
      }
    });
    const opened = await openWorkbook(file);
    expect(opened.snapshot.sheets[opened.snapshot.sheetOrder[0]!]!.cellData![2]![0]!.v).toBe("Würze ½");
    const saved = await saveWorkbook(opened.snapshot, opened.computed, opened.carry);
    expect(packageProblems(saved)).toEqual([]);
    expect(textOf(saved, "xl/sharedStrings.xml")).toContain("Würze ½");
  });

  it.each([
    ["bytes that are no UTF-8", (parts: PackageParts) => latin1(parts, "UTF-8")],
    ["another encoding", (parts: PackageParts) => latin1(parts, "ISO-8859-1")],
  ])("%s are refused in words", async (_, change) => {
    expect(await refusal(goldenWith(change))).toMatch(
      /its part xl\/worksheets\/sheet1\.xml is written in letters other than UTF-8 and UTF-16/,
    );
  });
});

function latin1(parts: PackageParts, encoding: string): void {
  const text = partText(parts, SHEET)!
    .replace("<t>FG</t>", "<t>W\u00fcrze</t>")
    .replace(/encoding="UTF-8"/, `encoding="${encoding}"`);
  parts.set(SHEET, Uint8Array.from([...text].map((sign) => sign.charCodeAt(0) & 0xff)));
}

it("finds a part whose name is written in other capitals than the link to it", async () => {
  const file = goldenWith((parts) => {
    parts.set("xl/Worksheets/Sheet1.XML", parts.get(SHEET)!);
    parts.set("xl/Worksheets/_rels/Sheet1.XML.rels", parts.get("xl/worksheets/_rels/sheet1.xml.rels")!);
    parts.delete(SHEET);
    parts.delete("xl/worksheets/_rels/sheet1.xml.rels");
  });
  const opened = await openWorkbook(file);
  expect(opened.snapshot.resources?.find(({ name }) => name.includes("TABLE"))?.data).toContain("table-");
  expect(packageProblems(await saveWorkbook(opened.snapshot, opened.computed, opened.carry))).toEqual([]);
});

describe("two sheets of one name are said", () => {
  it.each([
    ["Batch 1", /two of its sheets are called “Batch 1”/],
    ["BATCH 1", /two of its sheets are called “Batch 1” and “BATCH 1”, which is one name/],
  ])("%s", async (name, words) => {
    expect(await refusal(goldenWith((parts) => replaceIn(parts, "xl/workbook.xml", 'name="Lists"', `name="${name}"`)))).toMatch(words);
  });
});

it("opens a file with a cell in the last row", async () => {
  const file = goldenWith((parts) =>
    replaceIn(parts, SHEET, "</sheetData>", '<row r="1048576"><c r="C1048576"><v>7</v></c></row></sheetData>'),
  );
  const { snapshot } = await openWorkbook(file);
  const sheet = snapshot.sheets[snapshot.sheetOrder[0]!]!;
  expect(sheet.rowCount).toBe(1_048_576);
  expect(sheet.cellData![1_048_575]![2]!.v).toBe(7);
});

it("opens a workbook with a sheet that is one chart, and says that it is not shown", async () => {
  const file = goldenWith((parts) => {
    parts.set("xl/chartsheets/sheet1.xml", new TextEncoder().encode("<chartsheet/>"));
    replaceIn(parts, "xl/workbook.xml", "<sheets>", '<sheets><sheet name="Chart1" sheetId="9" r:id="rIdC"/>');
    replaceIn(
      parts,
      "xl/_rels/workbook.xml.rels",
      "</Relationships>",
      '<Relationship Id="rIdC" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/chartsheet" Target="chartsheets/sheet1.xml"/></Relationships>',
    );
    replaceIn(parts, "xl/workbook.xml", 'localSheetId="0"', 'localSheetId="1"');
  });
  const opened = await openWorkbook(file);
  expect(opened.snapshot.sheetOrder.map((id) => opened.snapshot.sheets[id]!.name)).toEqual(["Batch 1", "Lists"]);
  expect(opened.remarks).toEqual([expect.stringContaining("“Chart1”")]);
  const saved = await saveWorkbook(opened.snapshot, opened.computed, opened.carry);
  expect(packageProblems(saved)).toEqual([]);
  expect(textOf(saved, "xl/workbook.xml")).toContain('name="_xlnm.Print_Area" localSheetId="0"');
});

describe("a formula nested until the stack ends", () => {
  const nested = (depth: number): string => `${"SUM(".repeat(depth)}1${")".repeat(depth)}`;
  const chain = `1${"+1".repeat(20_000)}`;
  const file = withCells(
    `<c r="H11"><f>${nested(50_000)}</f><v>1</v></c><c r="I11" t="str"><f>${chain}</f><v>a lot</v></c><c r="J11" cm="1"><f t="array" ref="J11:J12">${nested(300)}</f><v>1</v></c><c r="K11"><f>${nested(64)}</f><v>1</v></c>`,
  );

  it("stands at its value, is named, and keeps its text", async () => {
    const opened = await openWorkbook(file);
    const row = opened.snapshot.sheets[opened.snapshot.sheetOrder[0]!]!.cellData![10]!;
    expect([row[7]!.f, row[8]!.f, row[9]!.f]).toEqual([undefined, undefined, undefined]);
    expect([row[7]!.v, row[8]!.v, row[9]!.v]).toEqual([1, "a lot", 1]);
    expect(row[10]!.f).toBe(`=${nested(64)}`);
    expect(opened.remarks).toEqual([expect.stringMatching(/Batch 1!H11, Batch 1!I11, Batch 1!J11\. It shows the value/)]);
    const saved = await saveWorkbook(opened.snapshot, opened.computed, opened.carry);
    expect(cellXml(saved, "H11")).toContain(`<f>${nested(50_000)}</f><v>1</v>`);
    expect(cellXml(saved, "I11")).toContain(`<f>${chain}</f><v>a lot</v>`);
    expect(cellXml(saved, "J11")).toMatch(/ cm="1".*<f t="array" ref="J11:J12">SUM/);
  });

  it("goes when something else is typed over it", async () => {
    const opened = await openWorkbook(file);
    opened.snapshot.sheets[opened.snapshot.sheetOrder[0]!]!.cellData![10]![7]!.v = 2;
    expect(cellXml(await saveWorkbook(opened.snapshot, opened.computed, opened.carry), "H11")).toBe('<c r="H11"><v>2</v></c>');
  });

  it("is refused in words where it cannot stand still", async () => {
    const file = goldenWith((parts) =>
      replaceIn(parts, "xl/workbook.xml", '<definedName name="Factor">131.25', `<definedName name="Factor">${nested(300)}`),
    );
    expect(await refusal(file)).toMatch(/one of its names, rules or lists is a formula that is nested too deeply/);
  });
});

describe("reading XML costs what its length says", () => {
  /** The shortest of some runs, in milliseconds: what else the machine does makes it only longer. */
  const cost = (source: string): number =>
    Math.min(
      ...Array.from({ length: 7 }, () => {
        const started = performance.now();
        try {
          parseXml(source);
        } catch {
          // What is no XML is given up; that, too, must not take long.
        }
        return performance.now() - started;
      }),
    );

  it.each([
    ["opening brackets", (size: number) => "<".repeat(size)],
    ["a tag without an end", (size: number) => `<a${" b='c'".repeat(size / 6)}`],
    ["a tag of blanks", (size: number) => `<a${" ".repeat(size)}`],
    ["comments without an end", (size: number) => "<!--".repeat(size / 4)],
    ["elements", (size: number) => `<a>${"<b c='d'>e</b>".repeat(size / 14)}</a>`],
    ["half an entity", (size: number) => `<a>${"&#x1".repeat(size / 4)}</a>`],
  ])("%s", (_, made) => {
    const [small, large] = [40_000, 640_000];
    // 16 times the text; the square would be 256 times the work. Half a millisecond is what a clock in a page may be out.
    expect(cost(made(large))).toBeLessThan(64 * (cost(made(small)) + 0.5));
  });
});
