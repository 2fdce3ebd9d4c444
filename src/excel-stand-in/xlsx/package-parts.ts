import { inflateSync, strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { crc32 } from "./crc32";
import { UnreadableFileError } from "./unreadable-file-error";
import { asUtf8 } from "./xml-encoding";
import { zipEntries, type ZipEntry } from "./zip-entries";

/** The files inside an .xlsx, by path ("xl/workbook.xml"). */
export type PackageParts = Map<string, Uint8Array>;

/**
 * A small file can claim to unpack into an endless one. A batch sheet is about 12 parts and 160 kB, so 300 of them stay far
 * below this, and what is refused could not be shown in a page anyway.
 */
export const MAX_UNPACKED_BYTES = 200 * 1024 * 1024;
export const MAX_PARTS = 12_000;

/**
 * Unpacks an .xlsx from elsewhere in memory. Every part is held against its check sum, and its XML is in UTF-8 afterwards.
 * @throws {UnreadableFileError} if it is no .xlsx, is damaged, or would unpack to more than MAX_UNPACKED_BYTES or MAX_PARTS
 */
export function unpack(bytes: Uint8Array): PackageParts {
  refuseOtherFormats(bytes);
  try {
    const entries = zipEntries(bytes);
    if (entries.length > MAX_PARTS) throw new UnreadableFileError(`it is too large (more than ${MAX_PARTS} parts)`);
    const total = entries.reduce((sum, { size, packed }) => sum + Math.max(size, packed.length), 0);
    if (total > MAX_UNPACKED_BYTES)
      throw new UnreadableFileError(`it is too large (more than ${MAX_UNPACKED_BYTES / 1024 / 1024} MB unpacked)`);
    const parts: PackageParts = new Map();
    for (const entry of entries) {
      const path = entry.name.replaceAll("\\", "/").replace(/^\//, "");
      if (path.endsWith("/")) continue;
      if (parts.has(path)) throw new UnreadableFileError(`it is damaged: it holds ${path} twice`);
      parts.set(path, asUtf8(path, content(entry)));
    }
    return parts;
  } catch (error) {
    if (error instanceof UnreadableFileError) throw error;
    throw new UnreadableFileError("it is damaged or incomplete", { cause: error });
  }
}

/** fflate inflates into a buffer of the announced size, so a part cannot grow beyond that. */
function content({ name, method, crc32: expected, packed, size }: ZipEntry): Uint8Array {
  if (method !== STORED && method !== DEFLATED) throw new Error(`${name}: unknown compression ${method}`);
  const data = method === STORED ? packed : inflateSync(packed, { out: new Uint8Array(size) });
  if (data.length !== size || crc32(data) !== expected)
    throw new UnreadableFileError(`it is damaged: ${name} is not what was written (its check sum is wrong)`);
  return data;
}

const STORED = 0;
const DEFLATED = 8;

/** Unpacks what was packed here a moment ago: however large somebody's workbook is, it must be saved. */
export const unpackOwn = (bytes: Uint8Array): PackageParts => new Map(Object.entries(unzipSync(bytes)));

function refuseOtherFormats(bytes: Uint8Array): void {
  if (bytes.length === 0) throw new UnreadableFileError("it is empty");
  if (bytes[0] === 0xd0 && bytes[1] === 0xcf) {
    throw new UnreadableFileError("it is an old .xls file or has a password; save it as .xlsx without a password first");
  }
  if (bytes[0] !== 0x50 || bytes[1] !== 0x4b) throw new UnreadableFileError("it is not an .xlsx file");
}

/** Packs the parts; the list of content types comes first, as the packaging standard advises. */
export function pack(parts: PackageParts, savedAt: Date): Uint8Array {
  const first = "[Content_Types].xml";
  const paths = [first, ...[...parts.keys()].filter((path) => path !== first)];
  const files = Object.fromEntries(paths.filter((path) => parts.has(path)).map((path) => [path, parts.get(path)!]));
  return zipSync(files, { level: 6, mtime: savedAt });
}

/** Packs without compressing, for handing checked parts on to the library. */
export function packPlain(parts: PackageParts): Uint8Array {
  return zipSync(Object.fromEntries(parts), { level: 0 });
}

export const partText = (parts: PackageParts, path: string): string | undefined => {
  const data = parts.get(path);
  return data && strFromU8(data).replace(/^\uFEFF/, "");
};

export const setPartText = (parts: PackageParts, path: string, text: string): void => {
  parts.set(path, strToU8(text));
};
