/** A number with a decimal point or comma, its unit behind it or not; undefined where it is none. */
export function readDecimal(text: string): number | undefined {
  const match = /^([+-]?\d+(?:[.,]\d+)?)\s*(?:°?\s*[CFP]|SG|%)?$/i.exec(text.trim());
  if (!match?.[1]) return undefined;
  const value = Number(match[1].replace(",", "."));
  return Number.isFinite(value) ? value : undefined;
}
