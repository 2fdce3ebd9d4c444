import type { UnitSystem } from "../../../functions/quantities";
import { called, forSheet, type NumberField, type On } from "../describe/field";
import { inCore, unitOf } from "../describe/measures";

/* One typed figure, held against its description: asked by Check of every cell, and by a form before it writes one. */

/** What can hardly be: the other system's unit, or a percentage typed as a share of one. */
export const figureDoubt = (field: NumberField, value: number, { units }: On): string | undefined =>
  wrongUnit(field, value, units) ?? wrongShare(field, value);

/** Beyond what its place may have: the other system's unit, or a slip. */
function wrongUnit({ measure, plausible }: NumberField, value: number, units: UnitSystem): string | undefined {
  if (!plausible || measure === undefined) return undefined;
  const fits = (system: UnitSystem): boolean => {
    const core = inCore(measure, value, system);
    return core >= plausible.from && core <= plausible.to;
  };
  if (fits(units)) return undefined;
  const other = units === "us" ? "metric" : "us";
  const shown = (system: UnitSystem): string => unitOf(measure, system).replace("US ", "");
  return `${plausible.words} ${value} ${shown(units)}?${fits(other) ? ` That looks like ${shown(other)}; this sheet is in ${shown(units)}.` : " Check the figure and its unit."}`;
}

/** A percentage of more than all, or typed as a share of one. */
function wrongShare({ percentOf }: NumberField, value: number): string | undefined {
  if (percentOf === undefined) return undefined;
  if (value > 100) return `${percentOf} of ${value} %? More than all of it cannot be.`;
  const percent = Number((value * 100).toPrecision(4));
  return value > 0 && value <= 1 ? `${percentOf} of ${value} %? Type ${percent} for ${percent} %.` : undefined;
}

/** What a file would refuse, too: 0 is what a cell says that must not be empty. */
export function outsideLimits(field: NumberField, value: number, on: On, where = "this field"): string | undefined {
  const [from, to] = forSheet(field.limits, on);
  if ((value === 0 && !field.blank) || (value >= from && value <= to)) return undefined;
  if (value < 0 && from >= 0) return `${value} in ${where}: less than nothing cannot be.`;
  const name = called(field);
  const unit = unitOf(field.measure, on.units);
  return `${name.charAt(0).toUpperCase()}${name.slice(1)} ${value}${unit === "" ? "" : ` ${unit}`}? It may be from ${from} to ${to}.`;
}
