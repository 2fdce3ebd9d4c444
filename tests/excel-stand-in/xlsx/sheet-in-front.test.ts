import type { IWorkbookData } from "@univerjs/core";
import { describe, expect, it } from "vitest";
import { openWorkbook, saveWorkbook } from "../../../src/excel-stand-in/xlsx";
import { goldenWith, replaceIn, textOf } from "./support/parts";

const activeTab = (bytes: Uint8Array) => /activeTab="(\d+)"/u.exec(textOf(bytes, "xl/workbook.xml"))?.[1];

describe("the sheet in front", () => {
  it("is the one that the file says, and goes into the next file", async () => {
    const { snapshot, computed, carry } = await openWorkbook(
      goldenWith((parts) => replaceIn(parts, "xl/workbook.xml", / state="hidden"/u, "")),
    );
    const second = snapshot.sheetOrder[1]!;
    const bytes = await saveWorkbook(snapshot, computed, carry, { sheetInFront: second });
    expect(activeTab(bytes)).toBe("1");
    const again = await openWorkbook(bytes);
    expect(again.sheetInFront).toBe(again.snapshot.sheetOrder[1]);
    // A program that does not say which one it is leaves it as it was.
    expect(activeTab(await saveWorkbook(again.snapshot, again.computed, again.carry))).toBe("1");
  });

  it("is written for a workbook that came from no file, too", async () => {
    const sheets = { one: { id: "one", name: "One" }, two: { id: "two", name: "Two" } };
    const snapshot = { id: "book", sheetOrder: ["one", "two"], sheets, styles: {} } as unknown as IWorkbookData;
    expect(activeTab(await saveWorkbook(snapshot, {}, undefined, { sheetInFront: "two" }))).toBe("1");
    expect(activeTab(await saveWorkbook(snapshot, {}, undefined, { sheetInFront: "gone" }))).toBe("0");
  });

  it("is never a hidden one", async () => {
    const hidden = goldenWith((parts) =>
      replaceIn(parts, "xl/workbook.xml", /(<sheet (?![^>]*state=)[^>]*?)(\/>)/u, '$1 state="hidden"$2'),
    );
    const { sheetInFront, snapshot } = await openWorkbook(hidden);
    expect(snapshot.sheets[snapshot.sheetOrder[0]!]!.hidden).toBe(1);
    expect(sheetInFront).toBeUndefined();
  });
});
