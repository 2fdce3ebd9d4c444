import { crc32 as reference } from "node:zlib";
import fc from "fast-check";
import { strToU8, unzipSync, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { openWorkbook, saveWorkbook, UnreadableFileError } from "../../../src/excel-stand-in/xlsx";
import { crc32 } from "../../../src/excel-stand-in/xlsx/crc32";
import { share } from "../../support/drawn";
import { golden, goldenWith, replaceIn } from "./support/parts";

const SHEET = "xl/worksheets/sheet1.xml";

/** What a person would see of a file: everything but the file itself. */
async function seen(bytes: Uint8Array): Promise<string> {
  const { snapshot, computed, sheetInFront } = await openWorkbook(bytes);
  return JSON.stringify({ snapshot, computed, sheetInFront });
}

async function refusal(bytes: Uint8Array): Promise<string> {
  const failure: unknown = await openWorkbook(bytes).catch((error: unknown) => error);
  expect(failure).toBeInstanceOf(UnreadableFileError);
  return (failure as Error).message;
}

it("the check sum is that of Node's zlib", () => {
  fc.assert(fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => crc32(bytes) === reference(bytes)));
});

describe("one flipped bit is refused or changes nothing", async () => {
  const saved = await (async () => {
    const { snapshot, computed, carry } = await openWorkbook(golden());
    return saveWorkbook(snapshot, computed, carry);
  })();
  const stored = zipSync(unzipSync(saved), { level: 0 });

  it.each([
    ["deflated", saved],
    ["stored", stored],
  ])("in a %s file", async (_, bytes) => {
    const whole = await seen(bytes);
    const counted = { refused: 0, same: 0 };
    await fc.assert(
      fc.asyncProperty(fc.nat(bytes.length * 8 - 1), async (bit) => {
        const flipped = bytes.slice();
        flipped[bit >> 3]! ^= 1 << (bit & 7);
        const outcome = await seen(flipped).catch((error: unknown) => error);
        if (outcome instanceof UnreadableFileError) counted.refused++;
        else {
          expect(outcome).toBe(whole);
          counted.same++;
        }
      }),
      { numRuns: Math.ceil(300 * share) },
    );
    expect(counted.refused).toBeGreaterThan(counted.same);
  });

  it("also in the lists of the archive, where a bit is seldom drawn", async () => {
    const whole = await seen(stored);
    // The list at the end: its entries and where it begins, every byte with one bit flipped.
    const start = new DataView(stored.buffer, stored.byteOffset).getUint32(stored.length - 6, true);
    for (let at = start; at < stored.length; at += share < 1 ? 4 : 1) {
      const flipped = stored.slice();
      flipped[at]! ^= 1 << (at % 8);
      const outcome = await seen(flipped).catch((error: unknown) => error);
      if (!(outcome instanceof UnreadableFileError)) expect(outcome, `byte ${at - start} of the list`).toBe(whole);
    }
  });
});

describe("a part that is missing is named", () => {
  const withTexts = (sharedStrings: string | undefined) =>
    goldenWith((parts) => {
      replaceIn(parts, SHEET, '<c r="A3" t="inlineStr"><is><t>FG</t></is></c>', '<c r="A3" t="s"><v>1</v></c>');
      replaceIn(
        parts,
        "xl/_rels/workbook.xml.rels",
        "</Relationships>",
        '<Relationship Id="rIdS" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/sharedStrings" Target="sharedStrings.xml"/></Relationships>',
      );
      if (sharedStrings !== undefined) parts.set("xl/sharedStrings.xml", strToU8(sharedStrings));
    });

  it("opens with its texts", async () => {
    const { snapshot } = await openWorkbook(withTexts("<sst><si><t>OG</t></si><si><t>FG</t></si></sst>"));
    expect(snapshot.sheets[snapshot.sheetOrder[0]!]!.cellData![2]![0]!.v).toBe("FG");
  });

  it.each([
    ["the texts", withTexts(undefined), /its part xl\/sharedStrings\.xml is missing/],
    ["one of the texts", withTexts("<sst><si><t>OG</t></si></sst>"), /text 2 of cell A3 on “Batch 1” is not in it/],
    [
      "the texts and the link to them",
      goldenWith((parts) => replaceIn(parts, SHEET, '<c r="A3" t="inlineStr"><is><t>FG</t></is></c>', '<c r="A3" t="s"><v>0</v></c>')),
      /text 1 of cell A3 on “Batch 1” is not in it/,
    ],
    ["a sheet", goldenWith((parts) => parts.delete(SHEET)), /its part xl\/worksheets\/sheet1\.xml is missing/],
    ["the styles", goldenWith((parts) => parts.delete("xl/styles.xml")), /its part xl\/styles\.xml is missing/],
    ["the links", goldenWith((parts) => parts.delete("xl/_rels/workbook.xml.rels")), /its part xl\/_rels\/workbook\.xml\.rels is missing/],
    ["a table", goldenWith((parts) => parts.delete("xl/tables/table1.xml")), /its part xl\/tables\/table1\.xml is missing/],
    ["a chart", goldenWith((parts) => parts.delete("xl/charts/chart1.xml")), /its part xl\/charts\/chart1\.xml is missing/],
  ])("%s", async (_, bytes, words) => expect(await refusal(bytes)).toMatch(words));
});
