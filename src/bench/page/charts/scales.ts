import { isoDay } from "../../../workbook/grid/words/day-number";
import { dayShort } from "../../../workbook/grid/words/day-words";
import type { ChartAxisRecord } from "../../../excel-stand-in/excel/sheet-extras";

export type Span = readonly [low: number, high: number];

/** Round marks on an axis: about `count` of them, at 1, 2 or 5 times a power of ten. */
export function niceMarks([low, high]: Span, count: number): number[] {
  const step = niceStep((high - low) / count);
  const first = Math.ceil(low / step - 1e-9);
  const last = Math.floor(high / step + 1e-9);
  return Array.from({ length: last - first + 1 }, (_, index) => Number(((first + index) * step).toPrecision(12)));
}

function niceStep(rough: number): number {
  const power = 10 ** Math.floor(Math.log10(rough));
  return power * ([1, 2, 5].find((factor) => factor * power >= rough * 0.999) ?? 10);
}

/** From the axis's own limits where it has them, otherwise round figures just outside the values. */
export function axisSpan(values: readonly number[], axis: ChartAxisRecord, count = 6): Span {
  const low = axis.minimum ?? Math.min(...values);
  const high = axis.maximum ?? Math.max(...values);
  if (!Number.isFinite(low) || !Number.isFinite(high)) return [0, 1];
  // Values that are all alike still need some room to be drawn in: of days a few, not a share of all since 1900.
  const room = high > low ? 0 : isDateFormat(axis.numberFormat) ? 3 : Math.abs(high) * 0.05 || 1;
  const step = niceStep((high - low + 2 * room) / count);
  return [axis.minimum ?? Math.floor((low - room) / step + 1e-9) * step, axis.maximum ?? Math.ceil((high + room) / step - 1e-9) * step];
}

/** Carries a value from one axis to the height that it has on another. */
export const mapSpan =
  (from: Span, to: Span) =>
  (value: number): number =>
    to[0] + ((value - from[0]) / (from[1] - from[0])) * (to[1] - to[0]);

export const isDateFormat = (format: string | undefined): boolean =>
  /[dy]|mmm/iu.test(format?.replace(/"[^"]*"|\[[^\]]*\]|general/giu, "") ?? "");

/** How a figure reads on an axis with an Excel number format: decimals, per cent and dates; anything else as it is. */
export function axisText(format: string | undefined): (value: number) => string {
  if (format === undefined || /^general$/iu.test(format)) return (value) => String(Number(value.toPrecision(6)));
  // Our own formats read as in Excel; any other, as the pane says a day.
  if (isDateFormat(format)) return /^(yyyy-)?mm-dd$/u.test(format) ? (serial) => isoDay(serial).slice(-format.length) : dayShort;
  const decimals = /\.(0+)/u.exec(format)?.[1]?.length ?? 0;
  return format.includes("%") ? (value) => `${(value * 100).toFixed(decimals)} %` : (value) => value.toFixed(decimals);
}
