import { zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { MAX_PARTS, MAX_UNPACKED_BYTES, openWorkbook, UnreadableFileError } from "../../../src/excel-stand-in/xlsx";
import { golden, goldenWith, replaceIn } from "./support/parts";

const text = (value: string): Uint8Array => new TextEncoder().encode(value);
const cut = golden().slice(0, 3000);
const scrambled = golden().map((byte, index) => (index > 100 && index < 5000 ? byte ^ 0x5a : byte));

const cases: [what: string, bytes: Uint8Array, reason: RegExp][] = [
  ["an empty file", new Uint8Array(), /it is empty/],
  ["a text file", text("Malt;Mass\npale;4.2"), /it is not an \.xlsx file/],
  ["an old or protected file", new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]), /old \.xls file or has a password/],
  ["a file cut short", cut, /damaged or incomplete/],
  ["a scrambled file", scrambled, /damaged or incomplete/],
  ["another ZIP archive", zipSync({ "readme.txt": text("hello") }), /but not of a workbook/],
  [
    "a workbook without sheets",
    goldenWith((parts) => replaceIn(parts, "xl/workbook.xml", /<sheets>.*<\/sheets>/s, "<sheets/>")),
    /no worksheet/,
  ],
  ["broken XML", goldenWith((parts) => parts.set("xl/workbook.xml", text("<workbook><sheets></workbook>"))), /damaged or incomplete/],
  [
    "a cell outside every sheet",
    goldenWith((parts) =>
      parts.set(
        "xl/worksheets/sheet2.xml",
        text('<worksheet><sheetData><row r="9999999"><c r="A9999999"><v>1</v></c></row></sheetData></worksheet>'),
      ),
    ),
    /its cell A9999999 lies outside every sheet, whose last cell is XFD1048576/,
  ],
  ["a file that unpacks to too much", zipSync({ "xl/workbook.xml": new Uint8Array(MAX_UNPACKED_BYTES + 1) }), /too large/],
  [
    "parts that unpack to too much together",
    zipSync(Object.fromEntries(Array.from({ length: 6 }, (_, index) => [`part${index}`, new Uint8Array(MAX_UNPACKED_BYTES / 5)]))),
    /too large \(more than 200 MB/,
  ],
  [
    "too many parts",
    zipSync(Object.fromEntries(Array.from({ length: MAX_PARTS + 1 }, (_, index) => [`part${index}`, new Uint8Array(1)]))),
    /too large \(more than 12000 parts/,
  ],
];

describe("a file that cannot be opened", () => {
  it.each(cases)("%s is refused with a reason", async (_, bytes, reason) => {
    const failure: unknown = await openWorkbook(bytes).catch((error: unknown) => error);
    expect(failure).toBeInstanceOf(UnreadableFileError);
    expect((failure as Error).message).toMatch(/^this is not a spreadsheet file we can read: /);
    expect((failure as Error).message).toMatch(reason);
  });

  it("cannot hide its size by announcing a smaller one", async () => {
    const bomb = zipSync({ "xl/workbook.xml": new Uint8Array(MAX_UNPACKED_BYTES + 1) });
    const view = new DataView(bomb.buffer, bomb.byteOffset, bomb.byteLength);
    // The size stands in the entry itself and in the list at the end; both are made to say 100.
    for (let at = 0; at < bomb.length - 4; at++) if (view.getUint32(at, true) === MAX_UNPACKED_BYTES + 1) view.setUint32(at, 100, true);
    await expect(openWorkbook(bomb)).rejects.toThrow(UnreadableFileError);
  });
});
