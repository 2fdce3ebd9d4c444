import { strFromU8, strToU8, unzipSync, zipSync, type UnzipFileInfo } from "fflate";
import { UnreadableFileError } from "./unreadable-file-error";

/** The files inside an .xlsx, by path ("xl/workbook.xml"). */
export type PackageParts = Map<string, Uint8Array>;

/**
 * A small file can claim to unpack into an endless one. A batch sheet is about 12 parts and 160 kB, so 300 of them stay far
 * below this, and what is refused could not be shown in a page anyway.
 */
export const MAX_UNPACKED_BYTES = 200 * 1024 * 1024;
export const MAX_PARTS = 12_000;

/**
 * Unpacks an .xlsx from elsewhere in memory.
 * @throws {UnreadableFileError} if it is no .xlsx, is damaged, or would unpack to more than MAX_UNPACKED_BYTES or MAX_PARTS
 */
export function unpack(bytes: Uint8Array): PackageParts {
  refuseOtherFormats(bytes);
  let total = 0;
  let count = 0;
  try {
    return parts(bytes, (file) => {
      total += Math.max(file.originalSize, file.size);
      if (total > MAX_UNPACKED_BYTES)
        throw new UnreadableFileError(`it is too large (more than ${MAX_UNPACKED_BYTES / 1024 / 1024} MB unpacked)`);
      if (++count > MAX_PARTS) throw new UnreadableFileError(`it is too large (more than ${MAX_PARTS} parts)`);
    });
  } catch (error) {
    if (error instanceof UnreadableFileError) throw error;
    throw new UnreadableFileError("it is damaged or incomplete", { cause: error });
  }
}

/** Unpacks what was packed here a moment ago: however large somebody's workbook is, it must be saved. */
export const unpackOwn = (bytes: Uint8Array): PackageParts => parts(bytes, () => undefined);

/** fflate inflates into a buffer of the announced size, so a part cannot grow beyond what `look` was told. */
function parts(bytes: Uint8Array, look: (file: UnzipFileInfo) => void): PackageParts {
  const files = unzipSync(bytes, {
    filter: (file) => {
      look(file);
      return !file.name.endsWith("/");
    },
  });
  return new Map(Object.entries(files).map(([path, data]) => [path.replaceAll("\\", "/").replace(/^\//, ""), data]));
}

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
