/**
 * The check sum of a ZIP archive's parts: CRC-32 with the polynomial 0xEDB88320 (PKWARE, APPNOTE.TXT 4.4.7; ISO/IEC 21320-1).
 * fflate has one inside, but neither offers nor uses it when it unpacks. Held against Node's zlib.crc32 in the tests.
 */
export function crc32(bytes: Uint8Array): number {
  let crc = -1;
  for (let at = 0; at < bytes.length; at++) crc = (crc >>> 8) ^ TABLE[(crc ^ bytes[at]!) & 0xff]!;
  return ~crc >>> 0;
}

const TABLE = Int32Array.from({ length: 256 }, (_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  return value;
});
