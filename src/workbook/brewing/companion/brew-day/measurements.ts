import type { BatchCell } from "../../../batch/fields/cells";
import type { BatchSheet } from "../../../batch/read/batch-sheets";
import { batchFields } from "../../../batch/fields";
import type { ChoiceField, NumberField } from "../../../batch/describe/field";
import { linesOfOriginal } from "../reading/original-gravity";
import type { DayLine } from "./day-lines";

/** One thing that is read off, with the figures without which it says nothing. */
export interface Part {
  readonly main: NumberField;
  /** The temperature at which it was read. */
  readonly beside?: NumberField;
  /** Of a hydrometer: the reading is corrected for `beside`, which it then cannot do without. */
  readonly scale?: ChoiceField;
}

/** What a line of the brew day asks the brewer to measure. */
export interface Measurement {
  readonly id: "mash-ph" | "before-boil" | "after-boil" | "volume" | "original";
  readonly title: string;
  readonly parts: readonly Part[];
  /** Lines of the sheet's checks that judge it. */
  readonly judgedBy: readonly string[];
}

const { wort, beforeBoil, waterTreatment } = batchFields;
const volumeInFermenter: Part = { main: wort.fields.volume };
const measurements: readonly Measurement[] = [
  {
    id: "mash-ph",
    title: "pH of the mash",
    parts: [{ main: waterTreatment.fields.mash.fields.measuredPh }],
    judgedBy: ["water-treatment"],
  },
  {
    id: "before-boil",
    title: "Before the boil",
    parts: [
      { main: beforeBoil.fields.volume, beside: beforeBoil.fields.temperature },
      { main: beforeBoil.fields.reading, beside: beforeBoil.fields.sampleTemperature, scale: beforeBoil.fields.scale },
    ],
    judgedBy: ["before-boil"],
  },
  {
    id: "after-boil",
    title: "After the boil",
    parts: [{ main: beforeBoil.fields.afterVolume, beside: beforeBoil.fields.afterTemperature }],
    judgedBy: ["before-boil"],
  },
  { id: "volume", title: "In the fermenter", parts: [volumeInFermenter], judgedBy: ["volumes", "before-boil"] },
  {
    id: "original",
    title: "Before the yeast",
    parts: [volumeInFermenter, { main: wort.fields.reading, beside: wort.fields.sampleTemperature, scale: wort.fields.scale }],
    judgedBy: linesOfOriginal,
  },
];

export interface AskedHere {
  readonly measurement: Measurement;
  /** The line at which it is measured. */
  readonly row: number;
}

/**
 * What the day asks for, in its order, and is not on the sheet yet. A teacher's own words may ask in other places than ours: the
 * first line of the right part of the day that speaks of it is the one, else the last that it could be.
 */
export function askedByDay(sheet: BatchSheet, lines: readonly DayLine[]): AskedHere[] {
  const boils = lines.findIndex(({ kind }) => kind === "boil begins");
  const [before, after] = [
    lines.slice(0, boils < 0 ? lines.length : boils),
    lines.slice(lines.findIndex(({ kind }) => kind === "flame out") + 1),
  ];
  const said = (part: readonly DayLine[], words: RegExp): number | undefined =>
    part.find(({ kind, what }) => kind === "step" && words.test(what))?.row;
  const rows: Readonly<Record<Measurement["id"], number | undefined>> = {
    "mash-ph": said(before, /^(mash|rests?)\b/i),
    "before-boil": said(before, /\b(gravity|volume)\b/i) ?? said(before, /\b(extract|sugar)\b/i) ?? before.at(-1)?.row,
    "after-boil": lines.find(({ kind }) => kind === "flame out")?.row,
    volume: said(after, /\bfermenter\b/i),
    original: said(after, /\b(gravity|sample|hydrometer)\b/i) ?? said(after, /\b(pitch|yeast)\b/i) ?? after.at(-1)?.row,
  };
  return measurements.flatMap((measurement) => {
    const row = rows[measurement.id];
    const open = openParts(sheet, measurement);
    return row === undefined || open.length === 0 ? [] : [{ measurement: { ...measurement, parts: open }, row }];
  });
}

/** The parts whose cell the sheet has, and has empty. */
const openParts = (sheet: BatchSheet, { parts }: Measurement): Part[] => parts.filter(({ main }) => isEmptyOn(sheet, main));

/** What holds something already is never written over. */
export const isEmptyOn = (sheet: BatchSheet, { cell }: NumberField): boolean =>
  cell !== undefined && sheet.has(cell as BatchCell) && sheet.value(cell as BatchCell) === "";

/** What is asked up to a line; the last form with the volume in it is the one that asks for it. */
export function reachedBy(asked: readonly AskedHere[], row: number): AskedHere[] {
  const reached = asked.filter((one) => one.row <= row);
  return reached.filter(({ measurement }, index) => !reached.slice(index + 1).some((later) => asksForAll(later.measurement, measurement)));
}

const asksForAll = ({ parts }: Measurement, one: Measurement): boolean =>
  one.parts.every(({ main }) => parts.some((part) => part.main === main));
