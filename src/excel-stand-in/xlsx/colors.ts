import type { Nullable } from "@univerjs/core";
import { resolveThemeColor, type CellStyle } from "hucre/xlsx";

export type FileColor = NonNullable<NonNullable<CellStyle["font"]>["color"]>;

/** The first 8 colours of the fixed palette of old files (ECMA-376 part 1, 18.8.27), repeated at 8 to 15. */
const INDEXED = ["000000", "FFFFFF", "FF0000", "00FF00", "0000FF", "FFFF00", "FF00FF", "00FFFF"];

/** A file's colour as "#RRGGBB". Theme colours come out as the colour they have in this file's theme. */
export function colorFromFile(color: FileColor | undefined, theme: string[] | undefined): string | undefined {
  if (!color) return undefined;
  if (color.rgb) return `#${color.rgb.slice(-6).toUpperCase()}`;
  if (color.theme !== undefined && theme) {
    // Cell styles count light before dark (0 is lt1), the theme's own list dark before light (ECMA-376 part 1, 18.8.3).
    const index = color.theme < 4 ? color.theme ^ 1 : color.theme;
    const hex = resolveThemeColor(theme, index, color.tint);
    return hex ? `#${hex.slice(-6).toUpperCase()}` : undefined;
  }
  if (color.indexed !== undefined && color.indexed < 16) return `#${INDEXED[color.indexed % 8]}`;
  return undefined;
}

/** A grid colour ("#abc", "#aabbcc", "rgb(1,2,3)") as "RRGGBB" for a file; undefined if it is none of these. */
export function colorToFile(color: Nullable<string>): string | undefined {
  const text = color ? color.trim() : "";
  const short = /^#([0-9a-f])([0-9a-f])([0-9a-f])$/i.exec(text);
  if (short)
    return short
      .slice(1)
      .map((digit) => digit + digit)
      .join("")
      .toUpperCase();
  const long = /^#([0-9a-f]{6})(?:[0-9a-f]{2})?$/i.exec(text);
  if (long) return long[1]!.toUpperCase();
  const parts = /^rgba?\(\s*(\d+)\s*,\s*(\d+)\s*,\s*(\d+)/i.exec(text);
  return parts
    ?.slice(1, 4)
    .map((part) => Math.min(255, Number(part)).toString(16).padStart(2, "0"))
    .join("")
    .toUpperCase();
}
