/**
 * The text of a file, whatever letters it is written in: UTF-8, UTF-16 with either end first (with its mark at the start or, as
 * every second byte of plain text is then 0, without), and otherwise what Windows writes in Western Europe (windows-1252).
 */
export function decodeText(bytes: Uint8Array): string {
  const encoding = sixteenBits(bytes);
  if (encoding) return new TextDecoder(encoding).decode(bytes);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}

function sixteenBits(bytes: Uint8Array): "utf-16le" | "utf-16be" | undefined {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return "utf-16le";
  if (first === 0xfe && second === 0xff) return "utf-16be";
  const start = bytes.subarray(0, 200);
  const zeros = (from: 0 | 1): number => start.filter((byte, at) => at % 2 === from && byte === 0).length;
  if (start.length < 4) return undefined;
  if (zeros(1) > 0.4 * start.length && zeros(0) === 0) return "utf-16le";
  return zeros(0) > 0.4 * start.length && zeros(1) === 0 ? "utf-16be" : undefined;
}
