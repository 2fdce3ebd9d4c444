/** One file in a ZIP archive, as the list at its end says. */
export interface ZipEntry {
  name: string;
  /** 0 is stored, 8 is deflated. */
  method: number;
  crc32: number;
  /** The bytes as they lie in the archive. */
  packed: Uint8Array;
  /** How many bytes they unpack to. */
  size: number;
}

/**
 * Reads the list at the end of a ZIP archive (APPNOTE.TXT 4.3). It is stricter than fflate's, which takes whatever the list says:
 * the list must lie where it is said to, hold what it is said to, and name each file as the file's own heading does. Whether a file's
 * bytes are right is for its check sum to tell.
 * @throws {Error} if anything does not fit
 */
export function zipEntries(bytes: Uint8Array): ZipEntry[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const list = findList(view);
  const entries: ZipEntry[] = [];
  let at = list.start;
  for (let count = 0; count < list.count; count++) {
    must(view.getUint32(at, true) === LISTED, "an entry of the list is not there");
    const nameLength = view.getUint16(at + 28, true);
    const extraLength = view.getUint16(at + 30, true);
    const extra = at + 46 + nameLength;
    const { packedSize, size, offset } = longSizes(view, extra, extraLength, {
      size: view.getUint32(at + 24, true),
      packedSize: view.getUint32(at + 20, true),
      offset: view.getUint32(at + 42, true),
    });
    must(view.getUint32(offset, true) === HEADING, "a part has no heading");
    must((view.getUint16(at + 8, true) & ENCRYPTED) === 0, "a part has a password");
    const name = bytes.subarray(at + 46, extra);
    must(
      nameLength === view.getUint16(offset + 26, true) && equal(name, bytes.subarray(offset + 30, offset + 30 + nameLength)),
      "a part has two names",
    );
    const start = offset + 30 + nameLength + view.getUint16(offset + 28, true);
    must(start + packedSize <= list.start, "a part ends after the list begins");
    entries.push({
      name: decode(name),
      method: view.getUint16(at + 10, true),
      crc32: view.getUint32(at + 16, true),
      packed: bytes.subarray(start, start + packedSize),
      size,
    });
    at = extra + extraLength + view.getUint16(at + 32, true);
  }
  must(at === list.end, "the list is longer or shorter than it is said to be");
  return entries;
}

const HEADING = 0x04034b50;
const LISTED = 0x02014b50;
const END = 0x06054b50;
const LONG_END = 0x06064b50;
const LONG_END_PLACE = 0x07064b50;
const ENCRYPTED = 1;
const SEE_EXTRA = 0xffffffff;

function must(holds: boolean, otherwise: string): asserts holds {
  if (!holds) throw new Error(`broken archive: ${otherwise}`);
}

interface List {
  start: number;
  end: number;
  count: number;
}

function findList(view: DataView): List {
  let end = view.byteLength - 22;
  const last = Math.max(0, end - 0xffff);
  while (end >= last && view.getUint32(end, true) !== END) end--;
  must(end >= last, "its end is missing");
  if (end >= 20 && view.getUint32(end - 20, true) === LONG_END_PLACE) return longList(view, end - 20);
  const count = view.getUint16(end + 10, true);
  const start = view.getUint32(end + 16, true);
  must(count === view.getUint16(end + 8, true) && start + view.getUint32(end + 12, true) === end, "the list does not lie where it should");
  return { start, end, count };
}

/** The form for archives of more than 65,535 files or 4 GB, which some programs also write for small ones (4.3.14). */
function longList(view: DataView, place: number): List {
  const record = long(view, place + 8);
  must(view.getUint32(record, true) === LONG_END, "the list does not lie where it should");
  const start = long(view, record + 48);
  must(start + long(view, record + 40) === record, "the list does not lie where it should");
  return { start, end: record, count: long(view, record + 32) };
}

interface Sizes {
  size: number;
  packedSize: number;
  offset: number;
}

/** Numbers that do not fit into 32 bits stand in an extra field, in this order (4.5.3). */
function longSizes(view: DataView, extra: number, length: number, short: Sizes): Sizes {
  if (!Object.values(short).includes(SEE_EXTRA)) return short;
  let at = extra;
  while (at < extra + length && view.getUint16(at, true) !== 1) at += 4 + view.getUint16(at + 2, true);
  must(at < extra + length, "a size is missing");
  at += 4;
  const next = (value: number): number => {
    if (value !== SEE_EXTRA) return value;
    at += 8;
    return long(view, at - 8);
  };
  return { size: next(short.size), packedSize: next(short.packedSize), offset: next(short.offset) };
}

const long = (view: DataView, at: number): number => Number(view.getBigUint64(at, true));

const equal = (one: Uint8Array, other: Uint8Array): boolean => one.every((byte, index) => byte === other[index]);

/** Names of an .xlsx are ASCII (ECMA-376 part 2, 6.2.2); others are read as UTF-8. */
const decode = (name: Uint8Array): string => new TextDecoder().decode(name);
