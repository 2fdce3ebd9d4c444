import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { pack, partText, setPartText, unpack, type PackageParts } from "../../../../src/excel-stand-in/xlsx/package-parts";

export const golden = (): Uint8Array => new Uint8Array(readFileSync(fileURLToPath(new URL("../fixtures/golden.xlsx", import.meta.url))));

/** One part of a file as text; an error if it is not there. */
export function textOf(bytes: Uint8Array, path: string): string {
  const text = partText(unpack(bytes), path);
  if (text === undefined) throw new Error(`no part ${path}`);
  return text;
}

/** The XML of one cell of a sheet. */
export function cellXml(bytes: Uint8Array, address: string, sheet = 1): string {
  return new RegExp(`<c [^>]*r="${address}"[^>]*?(?:/>|>.*?</c>)`, "s").exec(textOf(bytes, `xl/worksheets/sheet${sheet}.xml`))?.[0] ?? "";
}

/** golden.xlsx with some parts changed: a file as another program might write it. */
export function goldenWith(change: (parts: PackageParts) => void): Uint8Array {
  const parts = unpack(golden());
  change(parts);
  return pack(parts, new Date(2026, 0, 1));
}

export function replaceIn(parts: PackageParts, path: string, from: string | RegExp, to: string): void {
  const before = partText(parts, path) ?? "";
  const after = before.replace(from, to);
  if (after === before) throw new Error(`${path}: nothing to replace`);
  setPartText(parts, path, after);
}
