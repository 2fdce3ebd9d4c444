import { describe, expect, it } from "vitest";
import { saveWorkbook } from "../../../src/excel-stand-in/xlsx";
import { fullWorkbook } from "./support/full-workbook";
import { cellXml, textOf } from "./support/parts";

/** The exact form is that of a file saved by Excel for Mac in which a custom function had been used. */
describe("cells with our functions in a saved file", async () => {
  const { snapshot, computed } = fullWorkbook();
  const saved = await saveWorkbook(snapshot, computed);
  const withoutStyle = (address: string): string => cellXml(saved, address).replace(/ s="\d+"/, "");

  it.each([
    ["a number", "B4", '<c r="B4" cm="1"><f t="array" ref="B4">_xldudf_GYLE_BEER_ABV(og,fg)</f><v>5.1</v></c>'],
    ["a text", "B5", '<c r="B5" cm="1" t="str"><f t="array" ref="B5">_xldudf_GYLE_BEER_WORD(og)</f><v>strong</v></c>'],
    ["an empty text", "B7", '<c r="B7" cm="1" t="str"><f t="array" ref="B7">_xldudf_GYLE_BEER_STATUS(og,fg)</f><v/></c>'],
    ["an error", "C6", '<c r="C6" cm="1" t="e"><f t="array" ref="C6">_xldudf_GYLE_BEER_ABV(fg,og)</f><v>#VALUE!</v></c>'],
    ["inside a native function", "B6", '<c r="B6" cm="1"><f t="array" ref="B6">ROUND(_xldudf_GYLE_BEER_ABV(og,fg)*2,1)</f><v>10.2</v></c>'],
    ["a spill", "A11", '<c r="A11" cm="1" t="str"><f t="array" ref="A11:B13">_xldudf_GYLE_PLAN(3)</f><v>heat</v></c>'],
    ["a spilled number", "B12", '<c r="B12"><v>66</v></c>'],
    ["a spilled error", "B13", '<c r="B13" t="e"><v>#N/A</v></c>'],
    ["a native formula beside them", "C5", '<c r="C5" t="str"><f>B5&amp;"!"</f><v>strong!</v></c>'],
    ["a native truth value", "D7", '<c r="D7" t="b"><f>B2&gt;1</f><v>1</v></c>'],
    ["a native formula over a whole column", "C19", '<c r="C19"><f>_xlfn.LET(_xlpm.m,Maltsone[Mass],SUM(_xlpm.m*2))</f><v>11</v></c>'],
  ])("%s (%s)", (_, address, expected) => expect(withoutStyle(address)).toBe(expected));

  it("keeps spilled texts as ordinary cells, empty ones too", () => {
    expect(cellXml(saved, "A12")).toMatch(/t="s"/);
    expect(cellXml(saved, "A13")).toMatch(/t="s"/);
  });

  it("says what the mark on those cells means", () => {
    const metadata = textOf(saved, "xl/metadata.xml");
    expect(metadata).toContain('<metadataType name="XLDAPR"');
    expect(metadata).toContain('uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}"');
    expect(metadata).toContain('<xda:dynamicArrayProperties fDynamic="1" fCollapsed="0"/>');
    expect(textOf(saved, "xl/_rels/workbook.xml.rels")).toContain("/relationships/sheetMetadata");
    expect(textOf(saved, "[Content_Types].xml")).toContain("spreadsheetml.sheetMetadata+xml");
  });

  it("has no parts of an add-in, no chain of calculation and no forced calculation", () => {
    expect(textOf(saved, "[Content_Types].xml")).not.toMatch(/webextension|calcChain/i);
    expect(textOf(saved, "xl/workbook.xml")).toContain('<calcPr calcId="191029"/>');
  });
});
