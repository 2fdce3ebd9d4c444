import type { IStyleData } from "@univerjs/core";
import type { CellStyle } from "hucre/xlsx";
import { bordersFromFile, bordersToFile } from "./borders";
import { colorFromFile, colorToFile } from "./colors";

type FileFont = NonNullable<CellStyle["font"]>;
type FileAlignment = NonNullable<CellStyle["alignment"]>;

/** What a workbook's styles are read against: its theme's colours and the font that cells have by default. */
export interface StyleContext {
  theme: string[] | undefined;
  defaultFont: FileFont;
}

export const DEFAULT_FONT: FileFont = { name: "Calibri", size: 11 };

/** One step of a cell's indent in the grid, in pixels: about the width of three spaces of 11 point Calibri. */
export const INDENT_PIXELS = 9;

const HORIZONTAL = { left: 1, center: 2, right: 3, justify: 4, distributed: 6 } as const;
const VERTICAL = { top: 1, center: 2, bottom: 3 } as const;
const WRAP = 3;
const nameOf = <Name extends string>(table: Record<Name, number>, number: unknown): Name | undefined =>
  (Object.keys(table) as Name[]).find((name) => table[name] === number);

/** A cell's look in the grid's terms; undefined if it is the default look. */
export function styleFromFile(style: CellStyle | undefined, context: StyleContext): IStyleData | undefined {
  if (!style) return undefined;
  const fill = style.fill?.type === "pattern" && style.fill.pattern !== "none" ? style.fill : undefined;
  const background = colorFromFile(fill?.fgColor ?? fill?.bgColor, context.theme);
  const borders = bordersFromFile(style.border, context.theme);
  const result: IStyleData = {
    ...fontFromFile(style.font, context),
    ...(background ? { bg: { rgb: background } } : {}),
    ...(borders ? { bd: borders } : {}),
    ...alignmentFromFile(style.alignment),
    ...(style.numFmt && style.numFmt !== "General" ? { n: { pattern: style.numFmt } } : {}),
  };
  return Object.keys(result).length > 0 ? result : undefined;
}

export function fontFromFile(font: FileFont | undefined, context: StyleContext): IStyleData {
  if (!font) return {};
  const usual = context.defaultFont;
  const color = colorFromFile(font.color, context.theme);
  return {
    ...(font.name && font.name !== usual.name ? { ff: font.name } : {}),
    ...(font.size && font.size !== usual.size ? { fs: font.size } : {}),
    ...(font.bold ? { bl: 1 } : {}),
    ...(font.italic ? { it: 1 } : {}),
    ...(font.underline ? { ul: { s: 1 } } : {}),
    ...(font.strikethrough ? { st: { s: 1 } } : {}),
    ...(color && color !== colorFromFile(usual.color, context.theme) ? { cl: { rgb: color } } : {}),
    ...(font.vertAlign ? { va: font.vertAlign === "subscript" ? 2 : 3 } : {}),
  };
}

function alignmentFromFile(alignment: FileAlignment | undefined): IStyleData {
  if (!alignment) return {};
  const horizontal = HORIZONTAL[alignment.horizontal as keyof typeof HORIZONTAL];
  const vertical = VERTICAL[alignment.vertical as keyof typeof VERTICAL];
  const turn = alignment.textRotation;
  return {
    ...(horizontal ? { ht: horizontal } : {}),
    ...(vertical ? { vt: vertical } : {}),
    ...(alignment.wrapText ? { tb: WRAP } : {}),
    ...(alignment.indent ? { pd: { l: alignment.indent * INDENT_PIXELS } } : {}),
    // A file counts 1 to 90 upwards and 91 to 180 downwards; 255 stacks the letters.
    ...(turn ? { tr: turn === 255 ? { a: 0, v: 1 as const } : { a: turn > 90 ? turn - 90 : -turn } } : {}),
  };
}

/** The grid's look in a file's terms; undefined if there is nothing to say. */
export function styleToFile(style: IStyleData | undefined, defaultFont: FileFont, unlocked = false): CellStyle | undefined {
  const font = style && fontToFile(style);
  const fill = colorToFile(style?.bg?.rgb);
  const border = style?.bd && bordersToFile(style.bd);
  const alignment = style && alignmentToFile(style);
  const result: CellStyle = {
    ...(font ? { font: { ...defaultFont, ...font } } : {}),
    ...(fill ? { fill: { type: "pattern", pattern: "solid", fgColor: { rgb: fill } } } : {}),
    ...(border ? { border } : {}),
    ...(alignment ? { alignment } : {}),
    ...(style?.n?.pattern && style.n.pattern !== "General" ? { numFmt: style.n.pattern } : {}),
    ...(unlocked ? { protection: { locked: false } } : {}),
  };
  return Object.keys(result).length > 0 ? result : undefined;
}

export function fontToFile(style: IStyleData): FileFont | undefined {
  const color = colorToFile(style.cl?.rgb);
  const font: FileFont = {
    ...(style.ff ? { name: style.ff } : {}),
    ...(style.fs ? { size: style.fs } : {}),
    ...(style.bl ? { bold: true } : {}),
    ...(style.it ? { italic: true } : {}),
    ...(style.ul?.s ? { underline: true } : {}),
    ...(style.st?.s ? { strikethrough: true } : {}),
    ...(color ? { color: { rgb: color } } : {}),
    ...(style.va === 2 ? { vertAlign: "subscript" } : style.va === 3 ? { vertAlign: "superscript" } : {}),
  };
  return Object.keys(font).length > 0 ? font : undefined;
}

function alignmentToFile(style: IStyleData): FileAlignment | undefined {
  const horizontal = nameOf(HORIZONTAL, style.ht);
  const vertical = nameOf(VERTICAL, style.vt);
  const indent = Math.round((style.pd?.l ?? 0) / INDENT_PIXELS);
  const angle = style.tr?.a ?? 0;
  const alignment: FileAlignment = {
    // An indent counts from a side, so it needs one.
    ...(horizontal ? { horizontal } : indent > 0 ? { horizontal: "left" } : {}),
    ...(vertical ? { vertical } : {}),
    ...(style.tb === WRAP ? { wrapText: true } : {}),
    ...(indent > 0 ? { indent } : {}),
    ...(style.tr?.v ? { textRotation: 255 } : angle !== 0 ? { textRotation: angle > 0 ? 90 + angle : -angle } : {}),
  };
  return Object.keys(alignment).length > 0 ? alignment : undefined;
}
