import { BooleanNumber, BorderStyleTypes, type IBorderStyleData, type IStyleData, type Nullable } from "@univerjs/core";
import { smallestPoints } from "./page-setup";

/** Size of a cell's letters on paper, in points. */
export const printedPoints = (style: IStyleData, scale: number): number => Math.max(smallestPoints, (style.fs ?? 11) * scale);

/** Font in the words of CSS, for measuring and for the cell itself. */
export function fontOf(style: IStyleData, scale: number): string {
  const slant = style.it === BooleanNumber.TRUE ? "italic " : "";
  const weight = style.bl === BooleanNumber.TRUE ? "bold " : "";
  const family = (style.ff ?? "Calibri").split(",")[0]!.replaceAll(/["']/gu, "").trim();
  return `${slant}${weight}${printedPoints(style, scale)}pt "${family}", Calibri, sans-serif`;
}

const lines: Partial<Record<BorderStyleTypes, string>> = {
  [BorderStyleTypes.THIN]: "0.6pt solid",
  [BorderStyleTypes.HAIR]: "0.4pt solid",
  [BorderStyleTypes.DOTTED]: "0.75pt dotted",
  [BorderStyleTypes.DASHED]: "0.75pt dashed",
  [BorderStyleTypes.DASH_DOT]: "0.75pt dashed",
  [BorderStyleTypes.DASH_DOT_DOT]: "0.75pt dotted",
  [BorderStyleTypes.DOUBLE]: "2.25pt double",
  [BorderStyleTypes.MEDIUM]: "1.2pt solid",
  [BorderStyleTypes.MEDIUM_DASHED]: "1.2pt dashed",
  [BorderStyleTypes.MEDIUM_DASH_DOT]: "1.2pt dashed",
  [BorderStyleTypes.MEDIUM_DASH_DOT_DOT]: "1.2pt dotted",
  [BorderStyleTypes.SLANT_DASH_DOT]: "1.2pt dashed",
  [BorderStyleTypes.THICK]: "1.8pt solid",
};

/** Colours, lines and decoration of a cell. */
export function dress(cell: HTMLElement, style: IStyleData, blackAndWhite: boolean): void {
  const { bg, cl, bd, ul, st } = style;
  if (bg?.rgb && !blackAndWhite) cell.style.background = bg.rgb;
  if (cl?.rgb && !blackAndWhite) cell.style.color = cl.rgb;
  const decoration = [ul?.s === BooleanNumber.TRUE ? "underline" : "", st?.s === BooleanNumber.TRUE ? "line-through" : ""].join(" ").trim();
  if (decoration) cell.style.textDecoration = decoration;
  const line = (side: Nullable<IBorderStyleData>): string => {
    const kind = side ? lines[side.s] : undefined;
    return kind ? `${kind} ${(!blackAndWhite && side?.cl?.rgb) || "#000"}` : "";
  };
  for (const [side, place] of [
    [bd?.t, "borderTop"],
    [bd?.r, "borderRight"],
    [bd?.b, "borderBottom"],
    [bd?.l, "borderLeft"],
  ] as const) {
    const words = line(side);
    if (words) cell.style[place] = words;
  }
}

/** Whether anything but its words would be missed if a neighbour's words ran over it. */
export const isBare = ({ bg, bd }: IStyleData): boolean => !bg?.rgb && !(bd?.b ?? bd?.t ?? bd?.l ?? bd?.r);
