/**
 * Contrast of two colours by WCAG 2.2 (definitions of relative luminance and contrast ratio): 1 to 21.
 *
 * @param one, other "#RRGGBB"
 */
export function contrast(one: string, other: string): number {
  const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

function luminance(hex: string): number {
  const [red, green, blue] = [1, 3, 5].map((from) => linear(Number.parseInt(hex.slice(from, from + 2), 16) / 255)) as [
    number,
    number,
    number,
  ];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

const linear = (part: number): number => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4);

export const isHex = (text: unknown): text is string => typeof text === "string" && /^#[0-9a-f]{6}$/i.test(text);
