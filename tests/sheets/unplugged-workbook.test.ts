import { strFromU8, unzipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import { openWorkbook } from "../../src/excel-stand-in/xlsx";
import { unpluggedWorkbook } from "../../src/workbook/exchange/unplug/new-workbook/new-workbook";
import { benchTimeout, insertOn, openBatchBench } from "../support/batch-bench";
import { batchUnderWay, sheetNames } from "../support/unplug-bench";

let bench: HeadlessBench;
let bytes = new Uint8Array();
let parts: Record<string, string> = {};

beforeAll(async () => {
  bench = await openBatchBench();
  await insertOn(bench, batchUnderWay("metric", "extract", "bottles"));
  await Excel.run(async (context) => {
    const sheet = context.workbook.worksheets.getItem("Sheet1");
    sheet.getRange("A1:B1").values = [["a secret of another sheet", 17.5]];
    sheet.notes.add("A1", "another secret");
    context.workbook.names.add("tap", sheet.getRange("B1"));
    context.workbook.worksheets.getItem("Batch 1").getRange("X1:X2").formulas = [["=GYLE.HEAT.WARM(20,tap,68,3)"], ["=Sheet1!B1*2"]];
    Object.assign(context.workbook.properties, { author: "Somebody Real", company: "A firm", manager: "A chief", comments: "about me" });
    await context.sync();
  });
  await bench.calculate();
  const copies = await Excel.run((context) =>
    unpluggedWorkbook(context, ["Batch 1"], { prices: false }, (base64) => {
      bytes = new Uint8Array(Buffer.from(base64, "base64"));
      return Promise.resolve();
    }),
  );
  expect(copies.map(({ copyName }) => copyName)).toEqual(["Batch 1 unplugged"]);
  parts = Object.fromEntries(Object.entries(unzipSync(bytes)).map(([name, part]) => [name, strFromU8(part)]));
}, benchTimeout);
afterAll(() => bench.dispose());

describe("a new workbook of an unplugged sheet", () => {
  it("leaves this workbook as it was", () => {
    expect(sheetNames(bench)).toEqual(["Sheet1", "Batch 1"]);
  });

  it("holds that sheet alone, and opens", async () => {
    expect(parts["xl/workbook.xml"]?.match(/<sheet /g)).toHaveLength(1);
    const { snapshot } = await openWorkbook(bytes);
    expect(snapshot.sheetOrder.map((id) => snapshot.sheets[id]?.name)).toEqual(["Batch 1 unplugged"]);
  });

  it("names nobody, and tells nothing of the other sheets", () => {
    const all = Object.values(parts).join("\n");
    for (const secret of ["Somebody Real", "A firm", "A chief", "about me", "a secret of another sheet", "another secret", "Aunt Hilda"])
      expect([secret, all.includes(secret)]).toEqual([secret, false]);
  });

  it("calls no GYLE function: what is left of them stands in notes", () => {
    const sheet = Object.entries(parts).find(([name]) => /^xl\/worksheets\/[^/]+\.xml$/.test(name))?.[1] ?? "";
    expect(sheet.match(/<f[ >]/g)?.length).toBeGreaterThan(100);
    expect(sheet).not.toMatch(/GYLE\.|_xldudf_/i);
    expect(Object.entries(parts).filter(([name, text]) => name.includes("comments") && text.includes("GYLE.WORT.GRAVITY"))).toHaveLength(1);
    // Formulas that speak of a sheet left behind, by themselves or by a name, are their values.
    expect(sheet).toMatch(/<c r="X1"[^>]*><v>26\.06\d*<\/v>/);
    expect(sheet).toMatch(/<c r="X2"[^>]*><v>35<\/v>/);
  });

  it("has every part that it speaks of, and no other", () => {
    const spokenOf = Array.from((parts["[Content_Types].xml"] ?? "").matchAll(/PartName="\/([^"]+)"/g), ([, name = ""]) => name);
    expect(spokenOf.filter((name) => parts[name] === undefined)).toEqual([]);
    expect(Object.keys(parts).filter((name) => /customXml|externalLink|webextension|thumbnail|persons|calcChain/.test(name))).toEqual([]);
    for (const [name, text] of Object.entries(parts))
      if (name.endsWith(".rels"))
        for (const [, target = ""] of text.matchAll(/Target="([^"]+)"(?![^>]*External)/g))
          expect(Object.keys(parts).some((part) => part.endsWith(target.replace(/^(\.\.\/)+|^\//, "")))).toBe(true);
  });
});
