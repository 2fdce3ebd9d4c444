/** Names that Windows keeps for devices, whatever ending they have (Microsoft, "Naming files, paths, and namespaces"). */
const reserved = /^(?:con|prn|aux|nul|conin\$|conout\$|(?:com|lpt)[0-9¹²³])(?=\.|$)/iu;

/** In bytes: with an ending and " (1)" it stays below the 255 that file systems allow. */
const longest = 200;

/** A name that every file system takes, without an ending. */
export function fileNameFor(workbookName: string): string {
  const letters = Array.from(trimmed(workbookName.replace(/[\\/:*?"<>|\p{Cc}\p{Cf}\u2028\u2029]+/gu, " ")));
  const bytes = letters.map((letter) => new TextEncoder().encode(letter).length);
  const room = bytes.findIndex((_, index) => bytes.slice(0, index + 1).reduce((sum, each) => sum + each, 0) > longest);
  const short = trimmed(letters.slice(0, room === -1 ? undefined : room).join(""));
  return short === "" ? "workbook" : short.replace(reserved, (device) => `${device}_`);
}

/** Windows drops points and blanks at the end; files that begin with a point are hidden elsewhere. */
const trimmed = (name: string): string => name.replace(/^[.\s]+|[.\s]+$/gu, "");
