import { readFileSync } from "node:fs";
import { strFromU8, unzipSync } from "fflate";
import { beforeAll, describe, expect, it } from "vitest";
import { openWorkbook, saveWorkbook, type OpenedWorkbook } from "../../src/excel-stand-in/xlsx";
import { makeWorkbook, type MadeWorkbook } from "../../src/build/make-sample";
import { sharedBatch, unplugForMembers } from "../../src/build/sample-unplugged";
import { registry } from "../../src/functions/registry";
import { gyleCalls } from "../../src/workbook/grid/formulas";
import { loadHeadlessBench } from "../support/headless-bench";
import { compared, shownByLibreOffice, shownByUs, soffice } from "../support/libre-office";

const shipped = readFileSync(new URL("../../sample-workbooks/shared-unplugged.xlsx", import.meta.url));

let opened: OpenedWorkbook;
let made: MadeWorkbook;
beforeAll(async () => {
  opened = await openWorkbook(shipped, { functionNames: registry.map(({ id }) => id) });
  made = await makeWorkbook(await loadHeadlessBench(), [sharedBatch()], unplugForMembers);
}, 180_000);

type Shown = Map<string, unknown>;

/** Formula or constant of every cell of the only sheet. */
function contentsOf({ sheetOrder, sheets }: OpenedWorkbook["snapshot"]): Shown {
  const contents: Shown = new Map();
  for (const [row, columns] of Object.entries(sheets[sheetOrder[0] ?? ""]?.cellData ?? {})) {
    for (const [column, cell] of Object.entries(columns as Record<string, { f?: string | null; v?: unknown } | null>)) {
      const content = cell?.f ?? cell?.v;
      if (content !== undefined && content !== null && content !== "")
        contents.set(
          `${row},${column}`,
          typeof content === "string" ? content.replaceAll(" ", "") : Number(Number(content).toPrecision(9)),
        );
    }
  }
  return contents;
}

describe("shared-unplugged.xlsx", () => {
  it("is what the present code makes, cell by cell", () => {
    const inFile = contentsOf(opened.snapshot);
    expect(inFile.size).toBeGreaterThan(300);
    expect(Object.fromEntries(inFile)).toEqual(Object.fromEntries(contentsOf(made.snapshot)));
  });

  it("has no GYLE formula left in any cell, keeps each in a note, and says nothing of prices or of who made it", () => {
    const formulas = [...contentsOf(opened.snapshot).values()].filter((content) => typeof content === "string" && content.startsWith("="));
    expect(formulas.length).toBeGreaterThan(60);
    expect(formulas.filter((formula) => gyleCalls(String(formula)).length > 0)).toEqual([]);
    const parts = Object.entries(unzipSync(new Uint8Array(shipped))).filter(([name]) => /\.xml$/.test(name));
    const text = (pattern: RegExp) =>
      parts
        .filter(([name]) => pattern.test(name))
        .map(([, bytes]) => strFromU8(bytes))
        .join("");
    expect(text(/comments\d*\.xml$/)).toContain("GYLE.WORT.GRAVITY(");
    expect(text(/sheet\d+\.xml$/)).not.toContain("_xldudf_");
    expect(text(/core\.xml$/)).not.toMatch(/<dc:creator>[^<]+|<cp:lastModifiedBy>[^<]+/);
    expect(opened.snapshot.sheetOrder).toHaveLength(1);
  });
});

describe("in LibreOffice", () => {
  it.skipIf(!soffice)(
    "calculates to what we show, from the formulas alone",
    async () => {
      // Saved without results: LibreOffice must calculate every formula by itself.
      const bare = await saveWorkbook(made.snapshot, {}, undefined, {});
      const { numbers, texts, different } = compared(shownByUs(made), shownByLibreOffice(bare));
      expect(numbers).toBeGreaterThan(60);
      expect(texts).toBeGreaterThan(200);
      expect(different).toEqual([]);
    },
    200_000,
  );
});
