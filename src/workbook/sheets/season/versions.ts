import { quantity } from "../../../functions/quantities";
import type { BatchContents } from "../../batch/contents";
import {
  forSheet,
  type Column,
  type Field,
  type Fields,
  type Measure,
  type On,
  type Single,
  type Value,
  type Values,
} from "../../batch/describe/field";
import { unitOf } from "../../batch/describe/measures";
import { batchFields } from "../../batch/fields";
import { planOnly } from "../../batch/scale/scale-batch";
import { convertUnits } from "../../batch/scale/convert-units";
import type { BatchInWorkbook } from "../batches-in-workbook";

/** One batch among those of one recipe. */
export interface Version {
  readonly sheetName: string;
  readonly name: string;
  readonly brewedOn: number;
  /** What is other than in the one before it; the first has nothing. */
  readonly changes: readonly string[];
  /** What it came to: "OG 1.050, FG 1.012, score 4.2". */
  readonly reached: string;
}

export interface RecipeVersions {
  readonly name: string;
  readonly versions: readonly Version[];
}

/** "Sluice Bitter no. 3", "Sluice Bitter (2)" and "Sluice Bitter v4" are versions of one recipe: a number at the end of its name, and what calls it one, is left away. */
export function recipeName(name: string): string {
  const plain = name
    .trim()
    .replace(/[\s,–-]*(\(\d+\)|(?:no\.?|number|#|v\.?|version|batch)\s*\d+|\d+)$/iu, "")
    .trim();
  return plain === "" || plain === name.trim() ? name.trim() : recipeName(plain);
}

/** Recipes that were brewed or planned more than once, each with its batches by their days. */
export function recipesWithVersions(batches: readonly BatchInWorkbook[]): RecipeVersions[] {
  const groups = new Map<string, BatchInWorkbook[]>();
  for (const batch of batches) {
    const key = recipeName(batch.contents.batchName).toLowerCase();
    if (key !== "") groups.set(key, [...(groups.get(key) ?? []), batch]);
  }
  return [...groups.values()]
    .filter(({ length }) => length > 1)
    .map((group) => {
      const byDay = [...group].sort((one, other) => one.contents.brewedOn - other.contents.brewedOn);
      return {
        name: recipeName(byDay[0]!.contents.batchName),
        versions: byDay.map(({ sheetName, contents, cells }, index) => ({
          sheetName,
          name: contents.batchName,
          brewedOn: contents.brewedOn,
          changes: index === 0 ? [] : recipeChanges(byDay[index - 1]!.contents, contents),
          reached: (
            [
              ["OG", "og_shown", 3],
              ["FG", "fg_reached", 3],
              ["alcohol %", "abv_reached", 1],
              ["IBU", "ibu_reached", 0],
              ["score", "score", 1],
            ] as const
          )
            .flatMap(([word, cell, places]) => {
              const figure = cells.knownNumber(cell);
              return figure ? [`${word} ${figure.toFixed(places)}`] : [];
            })
            .join(", "),
        })),
      };
    });
}

/** What no version is told apart by: which batch it is, when, in which units, on whose steps. */
const notTheRecipe = new Set(["id", "sheetName", "batchName", "number", "brewedOn", "startTime", "units", "kitName", "steps"]);

/**
 * What is other in a recipe than in the one before, in words: ingredients as they would be in the same volume, so that a bigger batch
 * alone is only a bigger batch. In the units of the later one.
 */
export function recipeChanges(before: BatchContents, after: BatchContents): string[] {
  const later = planOnly(after);
  const scaled = inVolume(convertUnits(planOnly(before), later.units), later.volume);
  const on: On = { units: later.units, method: later.method };
  const volumes = convertUnits(planOnly(before), later.units).volume;
  return [
    ...(isSame(volumes, later.volume)
      ? []
      : [`Volume: ${shown(volumes, 2)} → ${shown(later.volume, 2)} ${quantity("volume").unit[on.units]}`]),
    ...fieldChanges(batchFields, scaled, later, on),
  ];
}

/** Malt, hops and what is poured in for another volume, by the same share. */
function inVolume(batch: BatchContents, volume: number): BatchContents {
  const factor = batch.volume > 0 && volume > 0 ? volume / batch.volume : 1;
  const scaled = <Line extends { readonly mass: number }>(line: Line): Line => ({ ...line, mass: line.mass * factor });
  return { ...batch, volume, topUp: batch.topUp * factor, malt: batch.malt.map(scaled), hops: batch.hops.map(scaled) };
}

function fieldChanges(fields: Fields, before: Values, after: Values, on: On): string[] {
  return Object.entries(fields).flatMap(([key, field]): string[] => {
    if (notTheRecipe.has(key)) return [];
    const [was, is] = [before[key], after[key]];
    switch (field.kind) {
      case "group":
        return fieldChanges(field.fields, (was ?? {}) as Values, (is ?? {}) as Values, on).map(
          (words) => `${forSheet(field.label, on)}: ${lower(words)}`,
        );
      case "table":
        return field.role === "measured"
          ? []
          : tableChanges(field.columns, (was ?? []) as readonly Values[], (is ?? []) as readonly Values[], on);
      case "list":
        return [];
      default:
        return singleChange(field, was, is, on);
    }
  });
}

/** Both values, unless they are shown alike. */
function asWords(about: string, field: Single, was: Value, is: Value, on: On): string[] {
  const [before, after] = [words(field, was, on), words(field, is, on)];
  return before === after ? [] : [`${about} ${before} → ${after}`];
}

/** A single word or figure; there are no lines within a line. */
const text = (value: Value): string => (typeof value === "string" || typeof value === "number" ? String(value).trim() : "");

const lower = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);

function singleChange(field: Single, was: Value, is: Value, on: On): string[] {
  if (field.role !== undefined && field.role !== "plan") return [];
  if (field.kind === "mark" || field.kind === "formula" || isSame(was, is, field.kind === "number" ? field.measure : undefined)) return [];
  return asWords(`${forSheet(field.label, on)}:`, field, was, is, on);
}

/** Lines go by their words and, for hops, by when they go in; those of the same are taken together. */
function tableChanges(columns: Readonly<Record<string, Column>>, before: readonly Values[], after: readonly Values[], on: On): string[] {
  if (!("mass" in columns)) return [];
  const byLine = (lines: readonly Values[]): Map<string, Values> => {
    const found = new Map<string, Values>();
    for (const line of lines) {
      const key = lineName(line).toLowerCase();
      const earlier = found.get(key);
      found.set(key, earlier ? { ...line, mass: Number(earlier["mass"]) + Number(line["mass"]) } : line);
    }
    return found;
  };
  const [was, is] = [byLine(before), byLine(after)];
  const mass = (line: Values): string => words(columns["mass"]!, line["mass"], on);
  return [
    ...[...is].flatMap(([key, line]): string[] => {
      const earlier = was.get(key);
      if (!earlier) return [`${lineName(line)}: new, ${mass(line)}`];
      return Object.entries(columns).flatMap(([name, column]) => {
        if (
          column.kind !== "number" ||
          column.role !== undefined ||
          name === "minutes" ||
          isSame(earlier[name], line[name], column.measure)
        )
          return [];
        const what = name === "mass" ? "" : ` ${lower(forSheet(column.label, on))}`;
        return asWords(`${lineName(line)}:${what}`, column, earlier[name], line[name], on);
      });
    }),
    ...[...was].flatMap(([key, line]) => (is.has(key) ? [] : [`${lineName(line)}: left out (${mass(line)} before)`])),
  ];
}

function lineName(line: Values): string {
  const name = text(line["ingredient"] ?? line["hop"]);
  const when = line["minutes"];
  return when === undefined ? name : `${name}, ${typeof when === "number" ? `${when} min` : text(when)}`;
}

/**
 * Less than a hundredth more or less is what weighing and rounding make, and half a degree where a copy in other units was rounded:
 * a hundredth of a mash's temperature would be most of a degree, which a brewer chooses.
 */
function isSame(was: Value, is: Value, measure?: Measure): boolean {
  if (typeof was !== "number" || typeof is !== "number") return text(was).toLowerCase() === text(is).toLowerCase();
  const allowed = measure === "temperature" ? 0.3 : 0.01 * Math.max(Math.abs(was), Math.abs(is));
  return Math.abs(was - is) <= allowed;
}

const shown = (figure: number, places: number): string => String(Number(figure.toFixed(places)));

function words(field: Field | Column, value: Value, on: On): string {
  if (value === "" || value === undefined) return "none";
  if (field.kind !== "number" || typeof value !== "number") return text(value);
  const format = forSheet(field.format, on);
  const places = format === "one" || field.measure === "temperature" ? 1 : format === "whole" ? 0 : 2;
  const unit = field.unit === undefined ? unitOf(field.measure, on.units) : forSheet(field.unit, on);
  return `${shown(value, places)}${unit === "" ? "" : ` ${unit}`}`;
}
