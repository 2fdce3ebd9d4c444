import { describe, expect, it } from "vitest";
import { openWorkbook, saveWorkbook } from "../../../src/excel-stand-in/xlsx";
import { SHEET_EXTRAS_RESOURCE, type WorkbookExtras } from "../../../src/excel-stand-in/excel/sheet-extras";
import { partText, setPartText, type PackageParts } from "../../../src/excel-stand-in/xlsx/package-parts";
import { makeResource, readResource } from "../../../src/excel-stand-in/xlsx/resources";
import { packageProblems } from "./support/package-problems";
import { cellXml, goldenWith, replaceIn, textOf } from "./support/parts";

const SHEET = "xl/worksheets/sheet1.xml";

const picture =
  '<xdr:oneCellAnchor><xdr:from><xdr:col>9</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>0</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:from><xdr:ext cx="9525" cy="9525"/>' +
  '<xdr:pic><xdr:nvPicPr><xdr:cNvPr id="7" name="Mark"/><xdr:cNvPicPr/></xdr:nvPicPr><xdr:blipFill><a:blip xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships" r:embed="rId2"/></xdr:blipFill>' +
  "<xdr:spPr/></xdr:pic><xdr:clientData/></xdr:oneCellAnchor>";

/** golden.xlsx as other programs write files: a picture, a password, colour bars, shared formulas, a theme, grouped rows, a filter, parts in odd order. */
const foreign = goldenWith((parts) => {
  renumberSheets(parts);
  const sheet = "xl/worksheets/sheet7.xml";
  replaceIn(
    parts,
    sheet,
    "<sheetProtection",
    '<sheetProtection algorithmName="SHA-512" hashValue="aGFzaA==" saltValue="c2FsdA==" spinCount="100000"',
  );
  replaceIn(
    parts,
    sheet,
    "<dataValidations",
    '<conditionalFormatting sqref="E2:E3"><cfRule type="dataBar" priority="3"><dataBar><cfvo type="min"/><cfvo type="max"/><color rgb="FF638EC6"/></dataBar></cfRule></conditionalFormatting><dataValidations',
  );
  replaceIn(parts, sheet, '<row r="13">', '<row r="13" outlineLevel="1">');
  replaceIn(
    parts,
    sheet,
    '<c r="B11"><v>1</v></c>',
    '<c r="B11"><v>1</v></c><c r="C11"><f t="shared" ref="C11:C12" si="0">$B11*2+A$1</f><v>2</v></c>',
  );
  replaceIn(parts, sheet, '<c r="B12"><v>2</v></c>', '<c r="B12"><v>2</v></c><c r="C12"><f t="shared" si="0"/><v>4</v></c>');
  replaceIn(
    parts,
    sheet,
    '<c r="A3" t="inlineStr"><is><t>FG</t></is></c>',
    '<c r="A3" t="inlineStr"><is><r><rPr><b/></rPr><t>F</t></r><r><t>G</t></r></is></c>',
  );
  replaceIn(parts, sheet, '<c r="B13">', '<c r="B13" s="5">');
  replaceIn(parts, "xl/styles.xml", '<cellXfs count="5">', '<cellXfs count="6">');
  replaceIn(parts, "xl/styles.xml", "</cellXfs>", '<xf fillId="3" applyFill="1"/></cellXfs>');
  replaceIn(parts, "xl/styles.xml", '<fills count="3">', '<fills count="4">');
  replaceIn(
    parts,
    "xl/styles.xml",
    "</fills>",
    '<fill><gradientFill degree="90"><stop position="0"><color rgb="FFFFFFFF"/></stop><stop position="1"><color rgb="FF00FF00"/></stop></gradientFill></fill></fills>',
  );
  replaceIn(parts, "xl/drawings/drawing1.xml", "</xdr:wsDr>", `${picture}</xdr:wsDr>`);
  replaceIn(
    parts,
    "xl/drawings/_rels/drawing1.xml.rels",
    "</Relationships>",
    '<Relationship Id="rId2" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/image" Target="../media/image1.png"/></Relationships>',
  );
  replaceIn(parts, "[Content_Types].xml", "<Override", '<Default Extension="png" ContentType="image/png"/><Override');
  parts.set("xl/media/image1.png", new Uint8Array([137, 80, 78, 71, 1, 2, 3]));
  parts.set("xl/calcChain.xml", new TextEncoder().encode("<calcChain/>"));
  parts.set("xl/webextensions/taskpanes.xml", new TextEncoder().encode("<x/>"));
});

/** Sheet 1 in sheet7.xml and sheet 2 in sheet1.xml, which a program may do. */
function renumberSheets(parts: PackageParts): void {
  const first = partText(parts, SHEET)!;
  const rels = partText(parts, "xl/worksheets/_rels/sheet1.xml.rels")!;
  setPartText(parts, "xl/worksheets/sheet7.xml", first);
  setPartText(parts, "xl/worksheets/_rels/sheet7.xml.rels", rels);
  setPartText(parts, SHEET, partText(parts, "xl/worksheets/sheet2.xml")!);
  for (const gone of ["xl/worksheets/sheet2.xml", "xl/worksheets/_rels/sheet1.xml.rels"]) parts.delete(gone);
  replaceIn(parts, "xl/_rels/workbook.xml.rels", "worksheets/sheet1.xml", "/xl/worksheets/sheet7.xml");
  replaceIn(parts, "xl/_rels/workbook.xml.rels", "worksheets/sheet2.xml", "worksheets/sheet1.xml");
  replaceIn(parts, "[Content_Types].xml", "sheet2.xml", "sheet7.xml");
}

const extrasOf = (snapshot: Parameters<typeof readResource>[0]): WorkbookExtras =>
  readResource<WorkbookExtras>(snapshot, SHEET_EXTRAS_RESOURCE)!;

describe("a file of another program, saved again", async () => {
  const opened = await openWorkbook(foreign);
  const [first = "", second = ""] = opened.snapshot.sheetOrder;
  const saved = await saveWorkbook(opened.snapshot, opened.computed, opened.carry);

  it("has sound parts", () => expect(packageProblems(saved)).toEqual([]));

  it("writes shared formulas out", () => {
    expect(opened.snapshot.sheets[first]?.cellData?.[11]?.[2]?.f).toBe("=$B12*2+A$1");
    expect(cellXml(saved, "C12")).toBe('<c r="C12"><f>$B12*2+A$1</f><v>4</v></c>');
  });

  it.each([
    ["the password", SHEET, 'hashValue="aGFzaA==" saltValue="c2FsdA==" spinCount="100000"'],
    ["colour bars", SHEET, "<dataBar>"],
    ["grouped rows", SHEET, 'outlineLevel="1"'],
    ["text with two fonts", SHEET, "<b/>"],
    ["a gradient", "xl/styles.xml", 'gradientFill degree="90"'],
    ["a picture", "xl/drawings/drawing1.xml", 'name="Mark"'],
    ["the link to the picture's file", "xl/drawings/_rels/drawing1.xml.rels", "/xl/media/image1.png"],
    ["a chart as it was", "xl/charts/chart1.xml", '<c:lineChart><c:grouping val="standard"/><c:ser><c:idx'],
  ])("keeps %s", (_, part, expected) => expect(textOf(saved, part)).toContain(expected));

  it("leaves out what is no longer true or of no use elsewhere", () => {
    expect(() => textOf(saved, "xl/calcChain.xml")).toThrow();
    expect(() => textOf(saved, "xl/webextensions/taskpanes.xml")).toThrow();
  });

  it("keeps drawings and notes with their sheet when sheets are added before it, moved and removed", async () => {
    const added = { id: "new", name: "New", cellData: { 0: { 0: { v: 1, t: 2 as const } } } };
    const snapshot = { ...opened.snapshot, sheetOrder: ["new", second, first], sheets: { ...opened.snapshot.sheets, new: added } };
    const bytes = await saveWorkbook(snapshot, opened.computed, opened.carry);
    expect(packageProblems(bytes)).toEqual([]);
    expect(textOf(bytes, "xl/worksheets/sheet1.xml")).not.toMatch(/<drawing|<legacyDrawing/);
    expect(textOf(bytes, "xl/worksheets/sheet3.xml")).toMatch(/<drawing .*<legacyDrawing/);
    expect(textOf(bytes, "xl/workbook.xml")).toContain('activeTab="0"');
    const again = await openWorkbook(bytes);
    expect(Object.values(extrasOf(again.snapshot).sheets).filter((sheet) => sheet.charts).length).toBe(1);
    const alone = await saveWorkbook({ ...opened.snapshot, sheetOrder: [second] }, opened.computed, opened.carry);
    expect(packageProblems(alone)).toEqual([]);
    expect(() => textOf(alone, "xl/charts/chart1.xml")).toThrow();
  });

  it("writes a chart anew when the grid changed it, and keeps the picture", async () => {
    const extras = extrasOf(opened.snapshot);
    extras.sheets[first]!.charts![0]!.title = "Changed";
    const bytes = await saveWorkbook(withExtras(opened.snapshot, extras), opened.computed, opened.carry);
    expect(packageProblems(bytes)).toEqual([]);
    expect(textOf(bytes, "xl/drawings/drawing1.xml")).toContain('name="Mark"');
    const charts = extrasOf((await openWorkbook(bytes)).snapshot);
    expect(Object.values(charts.sheets)[0]?.charts?.map((chart) => chart.title)).toEqual(["Changed"]);
  });

  it("writes a chart anew when its sheet has another name, and drops it when the grid did", async () => {
    const renamed = {
      ...opened.snapshot,
      sheets: { ...opened.snapshot.sheets, [first]: { ...opened.snapshot.sheets[first], name: "Renamed" } },
    };
    expect(textOf(await saveWorkbook(renamed, opened.computed, opened.carry), "xl/charts/chart1.xml")).toContain("Renamed!$F$1:$F$3");
    const extras = extrasOf(opened.snapshot);
    extras.sheets[first]!.charts = [];
    const bytes = await saveWorkbook(withExtras(opened.snapshot, extras), opened.computed, opened.carry);
    expect(packageProblems(bytes)).toEqual([]);
    expect(textOf(bytes, "xl/drawings/drawing1.xml")).toContain('name="Mark"');
    expect(() => textOf(bytes, "xl/charts/chart1.xml")).toThrow();
  });

  it("lets go of what belonged to a cell's old value", async () => {
    const snapshot = structuredClone(opened.snapshot);
    snapshot.sheets[first]!.cellData![2]![0]!.v = "Final";
    expect(cellXml(await saveWorkbook(snapshot, opened.computed, opened.carry), "A3")).not.toContain("<b/>");
  });
});

const withExtras = (snapshot: Awaited<ReturnType<typeof openWorkbook>>["snapshot"], extras: WorkbookExtras) => ({
  ...snapshot,
  resources: [...snapshot.resources!.filter((one) => one.name !== SHEET_EXTRAS_RESOURCE), makeResource(SHEET_EXTRAS_RESOURCE, extras)],
});
