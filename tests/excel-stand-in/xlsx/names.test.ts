import { describe, expect, it } from "vitest";
import { openWorkbook, saveWorkbook } from "../../../src/excel-stand-in/xlsx";
import type { GridName } from "../../../src/excel-stand-in/xlsx/defined-names";
import { readResource, RESOURCE } from "../../../src/excel-stand-in/xlsx/resources";
import { fullWorkbook } from "./support/full-workbook";
import { goldenWith, replaceIn, textOf } from "./support/parts";

const namesOf = (snapshot: Parameters<typeof readResource>[0]): GridName[] =>
  Object.values(readResource<Record<string, GridName>>(snapshot, RESOURCE.names) ?? {});

describe("names of single sheets", async () => {
  const { snapshot, computed } = fullWorkbook();
  const saved = await saveWorkbook(snapshot, computed);
  const again = await openWorkbook(saved);

  it("are written once for each sheet, with the sheet's position", () => {
    const workbook = textOf(saved, "xl/workbook.xml");
    expect(workbook).toContain(`<definedName name="og" localSheetId="0">'Pale No. 1'!$B$2</definedName>`);
    expect(workbook).toContain(`<definedName name="og" localSheetId="1">'O''Hara''s 2nd'!$B$2</definedName>`);
    expect(workbook).toContain('<definedName name="strength" comment="invented">_xldudf_GYLE_BEER_ABV(1.05,1.01)</definedName>');
    expect(workbook).toContain('<definedName name="tax" hidden="1">0.19</definedName>');
    expect(workbook).toContain(`<definedName name="_xlnm.Print_Titles" localSheetId="0">'Pale No. 1'!$1:$3</definedName>`);
  });

  it("are read back for the same sheets", () => {
    const og = namesOf(again.snapshot).filter((name) => name.name === "og");
    expect(og.map((name) => again.snapshot.sheets[name.localSheetId]?.name).sort()).toEqual(["O'Hara's 2nd", "Pale No. 1"]);
    expect(namesOf(again.snapshot).find((name) => name.name === "styles")?.localSheetId).toBe("AllDefaultWorkbook");
  });

  it("follow their sheet when sheets change places, and go when it goes", async () => {
    const [one, two, lists] = again.snapshot.sheetOrder as [string, string, string];
    const moved = { ...again.snapshot, sheetOrder: [lists, two, one] };
    const workbook = textOf(await saveWorkbook(moved, again.computed, again.carry), "xl/workbook.xml");
    expect(workbook).toContain(`<definedName name="og" localSheetId="2">'Pale No. 1'!$B$2</definedName>`);
    expect(workbook).toContain('<definedName name="_xlnm.Print_Area" localSheetId="2">');
    const less = { ...again.snapshot, sheetOrder: [two, lists] };
    expect(textOf(await saveWorkbook(less, again.computed, again.carry), "xl/workbook.xml")).not.toContain("No. 1");
  });

  it("without a sheet in their reference get their own", async () => {
    const bare = fullWorkbook().snapshot;
    const resource = bare.resources!.find((one) => one.name === RESOURCE.names)!;
    resource.data = JSON.stringify({ n: { id: "n", name: "volume", formulaOrRefString: "$B$9", localSheetId: "two" } });
    expect(textOf(await saveWorkbook(bare, computed), "xl/workbook.xml")).toContain(
      `<definedName name="volume" localSheetId="1">'O''Hara''s 2nd'!$B$9</definedName>`,
    );
  });
});

describe("names in files of other programs", () => {
  it("count sheets by the file's order, whatever the parts are called", async () => {
    const bytes = goldenWith((parts) =>
      replaceIn(parts, "xl/workbook.xml", '<definedName name="OG">', '<definedName name="OG" localSheetId="1" hidden="true">'),
    );
    const { snapshot } = await openWorkbook(bytes);
    expect(namesOf(snapshot).find((name) => name.name === "OG")).toMatchObject({ localSheetId: snapshot.sheetOrder[1], hidden: true });
  });
});
