import type { IBorderData, IBorderStyleData, Nullable } from "@univerjs/core";
import type { CellStyle } from "hucre/xlsx";
import { colorFromFile, colorToFile } from "./colors";

type FileBorder = NonNullable<CellStyle["border"]>;
type FileSide = NonNullable<FileBorder["top"]>;

/** The grid's line numbers (its enum BorderStyleTypes) by the file's names. */
const LINES: Record<FileSide["style"], number> = {
  thin: 1,
  hair: 2,
  dotted: 3,
  dashed: 4,
  dashDot: 5,
  dashDotDot: 6,
  double: 7,
  medium: 8,
  mediumDashed: 9,
  mediumDashDot: 10,
  mediumDashDotDot: 11,
  slantDashDot: 12,
  thick: 13,
};
const SIDES = { top: "t", right: "r", bottom: "b", left: "l" } as const;

export function bordersFromFile(border: FileBorder | undefined, theme: string[] | undefined): IBorderData | undefined {
  if (!border) return undefined;
  const read = (side: FileSide | undefined): IBorderStyleData | undefined =>
    side?.style && { s: LINES[side.style], cl: { rgb: colorFromFile(side.color, theme) ?? "#000000" } };
  const result: IBorderData = {};
  for (const [name, key] of Object.entries(SIDES) as [keyof typeof SIDES, "t" | "r" | "b" | "l"][]) {
    const side = read(border[name]);
    if (side) result[key] = side;
  }
  const diagonal = read(border.diagonal);
  if (diagonal && border.diagonalDown) result.tl_br = diagonal;
  if (diagonal && border.diagonalUp) result.bl_tr = diagonal;
  return Object.keys(result).length > 0 ? result : undefined;
}

export function bordersToFile(borders: IBorderData): FileBorder | undefined {
  const write = (line: Nullable<IBorderStyleData>): FileSide | undefined => {
    if (!line) return undefined;
    const style = (Object.keys(LINES) as FileSide["style"][]).find((name) => LINES[name] === (line.s as number));
    return style && { style, color: { rgb: colorToFile(line.cl?.rgb) ?? "000000" } };
  };
  const result: FileBorder = {};
  for (const [name, key] of Object.entries(SIDES) as [keyof typeof SIDES, "t" | "r" | "b" | "l"][]) {
    const side = write(borders[key]);
    if (side) result[name] = side;
  }
  const down = write(borders.tl_br);
  const up = write(borders.bl_tr);
  const diagonal = down ?? up;
  if (diagonal) Object.assign(result, { diagonal, ...(down ? { diagonalDown: true } : {}), ...(up ? { diagonalUp: true } : {}) });
  return Object.keys(result).length > 0 ? result : undefined;
}
