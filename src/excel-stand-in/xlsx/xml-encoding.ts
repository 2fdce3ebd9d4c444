import { UnreadableFileError } from "./unreadable-file-error";

/** Parts of the workbook itself. What a program keeps for itself under customXml is passed on as it came. */
const XML_PART = /^(?!customXml\/).*\.(xml|rels)$/i;

/**
 * The XML of a part in UTF-8, whatever it came in. A part may be in UTF-16 (ECMA-376 part 2, 8.1.4); how to tell is XML 1.0, appendix F.
 * @throws {UnreadableFileError} if it is in neither, as the standard does not allow
 */
export function asUtf8(path: string, bytes: Uint8Array): Uint8Array {
  if (!XML_PART.test(path)) return bytes;
  const [first = 0, second = 0] = bytes;
  const sixteen = (first === 0xff && second === 0xfe) || (first === 0x3c && second === 0) ? "utf-16le" : undefined;
  const swapped = (first === 0xfe && second === 0xff) || (first === 0 && second === 0x3c) ? "utf-16be" : undefined;
  try {
    const text = new TextDecoder(sixteen ?? swapped ?? "utf-8", { fatal: true }).decode(bytes);
    const declared = /^<\?xml[^>]*?encoding\s*=\s*["']([^"']*)["']/.exec(text.slice(0, 200))?.[1];
    if (sixteen ?? swapped) return new TextEncoder().encode(text.replace(/^(<\?xml[^>]*?encoding\s*=\s*["'])[^"']*/, "$1UTF-8"));
    if (declared === undefined || /^(utf-?8|us-ascii)$/i.test(declared) || !hasMore(bytes)) return bytes;
    throw new Error(declared);
  } catch {
    throw new UnreadableFileError(
      `its part ${path} is written in letters other than UTF-8 and UTF-16; save it again in a spreadsheet program`,
    );
  }
}

/** Whether there is anything beyond ASCII, which every declared encoding of a file in 8-bit letters writes alike. */
const hasMore = (bytes: Uint8Array): boolean => bytes.some((byte) => byte > 0x7f);
