import type { BatchCell } from "../../batch/fields/cells";
import { callScalar } from "../../../functions/call";
import { packReady } from "../../../functions/pack/ready";
import { batchIdOf, isUnplugged, unitsOf, type BatchSheet } from "../../batch/read/batch-sheets";
import type { UnitSystem } from "../../../functions/quantities";

export type DateKind =
  "starter" | "brew" | "dry-hops" | "dry-hops-out" | "look" | "first-reading" | "second-reading" | "packaging" | "first-taste";

/** One date in the life of a batch. */
export interface BatchDate {
  readonly kind: DateKind;
  readonly title: string;
  /** Excel day number; with a time of day only for the brew day. */
  readonly day: number;
  /** What to do then, in a sentence. */
  readonly words: string;
  /** Where the date comes from, for the one who wonders. */
  readonly basis: string;
}

/** What must be known of a batch to date it; undefined where the sheet does not say. */
export interface DatedBatch {
  readonly id: string;
  readonly name: string;
  readonly units: UnitSystem;
  readonly brewedOn: number | undefined;
  readonly startTime: number;
  readonly into: "bottles" | "keg";
  readonly packagedOn: number | undefined;
  readonly conditioningTemperature: number | undefined;
  readonly verdict: string;
  readonly lastReading: number | undefined;
  readonly forecastEnd: number | undefined;
  /** Day on which a starter is made, where the sheet has one. */
  readonly starterBy: number | undefined;
  /** Days on which dry hops go in, noted or else planned, and come out. */
  readonly dryIn: number | undefined;
  readonly dryOut: number | undefined;
  /** What the sheet says of the pressure; "" where nothing yet. */
  readonly pressureVerdict: string;
}

/** Common practice for an ale at room temperature: done by day 8 to 12. */
export const usualFermentationDays = 10;
/** The day of the second of two equal readings, and the day after for packaging. */
const daysFromEndToPackaging = 2;
const firstLookDays = 3;

export function datedBatch(sheet: BatchSheet): DatedBatch {
  const number = (name: BatchCell): number | undefined => sheet.knownNumber(name) || undefined;
  return {
    id: batchIdOf(sheet) || `sheet-${sheet.sheetName}`,
    name: sheet.text("batch_name") || sheet.sheetName,
    units: unitsOf(sheet),
    brewedOn: number("brewed_on"),
    startTime: number("start_time") ?? 0,
    into: sheet.text("into") === "keg" ? "keg" : "bottles",
    packagedOn: number("packaged_on"),
    conditioningTemperature: number("conditioning_temperature"),
    verdict: sheet.text("verdict"),
    lastReading: number("last_reading"),
    // A forecast has no plain form: unplugged it stands still, whatever was read since.
    forecastEnd: isUnplugged(sheet) ? undefined : number("end_expected"),
    starterBy: number("starter_by"),
    ...dryHops(number),
    pressureVerdict: sheet.knownText("pressure_verdict"),
  };
}

/** The stay of the dry hops: from the day noted, else from the day planned. */
function dryHops(number: (name: BatchCell) => number | undefined): Pick<DatedBatch, "dryIn" | "dryOut"> {
  const [noted, planned, days] = [number("dry_hopped_on"), number("dry_in"), number("dry_for")];
  const dryIn = noted ?? planned;
  return { dryIn, dryOut: dryIn === undefined || days === undefined ? undefined : Math.floor(dryIn) + days };
}

/** The dates of a batch from kettle to first taste; a batch that has stalled gets none after its next reading. */
export function batchDates(batch: DatedBatch): readonly BatchDate[] {
  const { brewedOn, verdict, lastReading } = batch;
  if (brewedOn === undefined) return [];
  const day = Math.floor(brewedOn);
  const brew: BatchDate = {
    kind: "brew",
    title: "Brew day",
    day: day + batch.startTime,
    words: "The steps stand on the sheet, by the clock.",
    basis: "written on the sheet",
  };
  const look: BatchDate[] =
    lastReading === undefined
      ? [
          {
            kind: "look",
            title: "First look",
            day: day + firstLookDays,
            words: "Read gravity and temperature: has it begun, and is it warm enough?",
            basis: "three days after the brew day (common practice)",
          },
        ]
      : [];
  if (verdict === "stalled")
    return [
      ...starter(batch),
      brew,
      {
        kind: "first-reading",
        title: "Read again",
        day: Math.floor(lastReading ?? day) + 3,
        words: "It has stalled: warm it, rouse the yeast, and see whether it falls again. Do not bottle.",
        basis: "three days after the last reading (common practice)",
      },
    ];
  return [...starter(batch), brew, ...look, ...dryHopping(batch), ...readings(batch, day), ...packaging(batch, day)];
}

const starter = ({ starterBy }: DatedBatch): BatchDate[] =>
  starterBy === undefined
    ? []
    : [
        {
          kind: "starter",
          title: "Make the starter",
          day: Math.floor(starterBy),
          words: "Boil its wort (it foams over in seconds, and scalds), chill it, pitch the yeast; cover it loosely, never seal it.",
          basis: "written on the sheet",
        },
      ];

function dryHopping({ dryIn, dryOut }: DatedBatch): BatchDate[] {
  if (dryIn === undefined) return [];
  const into: BatchDate = {
    kind: "dry-hops",
    title: "Dry hops in",
    day: Math.floor(dryIn),
    words: "Open it slowly: hops can make it foam. Note the day on the sheet; they can wake the fermentation up.",
    basis: "written on the sheet",
  };
  if (dryOut === undefined) return [into];
  return [
    into,
    {
      kind: "dry-hops-out",
      title: "Dry hops out",
      day: dryOut,
      words: "Take them out, or rack the beer off them.",
      basis: "written on the sheet",
    },
  ];
}

interface End {
  readonly day: number;
  readonly basis: string;
}

/** When it should stand at its end, and the stay of its hops is over: only what is read after them tells that it has finished. */
function end(batch: DatedBatch, brewDay: number): End {
  const found = endOfItself(batch, brewDay);
  const { dryIn, dryOut, verdict } = batch;
  const afterHops = dryIn === undefined || verdict === "steady" ? 0 : Math.max(Math.floor(dryIn), dryOut ?? 0) + 1;
  return afterHops > found.day ? { day: afterHops, basis: "the day after the stay of the dry hops" } : found;
}

/** As read, as forecast, or as usual. */
function endOfItself({ verdict, lastReading, forecastEnd }: DatedBatch, brewDay: number): End {
  if (verdict === "steady" && lastReading !== undefined)
    return { day: Math.floor(lastReading), basis: "steady since then, by the readings" };
  if (forecastEnd !== undefined) return { day: Math.ceil(forecastEnd), basis: "forecast from the readings" };
  return { day: brewDay + usualFermentationDays, basis: `${usualFermentationDays} days after the brew day (common practice for an ale)` };
}

function readings(batch: DatedBatch, brewDay: number): BatchDate[] {
  if (batch.verdict === "steady") return [];
  const { day, basis } = end(batch, brewDay);
  return [
    { kind: "first-reading", title: "Is it finished? First reading", day, words: "Read the gravity; read again tomorrow.", basis },
    {
      kind: "second-reading",
      title: "Is it finished? Second reading",
      day: day + 1,
      words: "The same as yesterday, and as low as expected: then it is finished. If not, wait.",
      basis: "a day after the first",
    },
  ];
}

function packaging(batch: DatedBatch, brewDay: number): BatchDate[] {
  const { packagedOn, into, conditioningTemperature, units } = batch;
  const planned = end(batch, brewDay).day + daysFromEndToPackaging;
  const day = packagedOn === undefined ? planned : Math.floor(packagedOn);
  const verb = into === "keg" ? "Kegging" : "Bottling";
  const over = batch.pressureVerdict.startsWith("over");
  const words = `Only when two readings a day apart have agreed: gas from unfinished beer bursts glass.${over ? " As planned now it will not hold: look at section 8 of the sheet before you fill anything." : ""}`;
  const filled: BatchDate = {
    kind: "packaging",
    title: verb,
    day,
    words,
    basis: packagedOn === undefined ? "the day after the second reading" : "written on the sheet",
  };
  // What must not be filled, or not be opened, is not tasted.
  const taste = into === "bottles" && !over ? readyOn(day, conditioningTemperature ?? null, units) : undefined;
  return taste === undefined
    ? [filled]
    : [
        filled,
        {
          kind: "first-taste",
          title: "First taste",
          day: taste,
          words:
            "Chill one bottle for a day and taste it. Flat: another week in the warm. Gushing: do not open or move the others; keep people away and cool the room.",
          basis: "by the temperature at which the bottles stand",
        },
      ];
}

export interface BackwardPlan {
  readonly brewBy: number;
  readonly packageBy: number;
  readonly conditioningDays: number;
}

/**
 * The latest brew day for a first taste on a day wanted.
 *
 * @param tasteOn day number
 * @param fermentationDays from the brew day to a beer that stands still
 * @param temperature where the bottles stand, in the unit of `units`
 */
export function backwardPlan(tasteOn: number, fermentationDays: number, temperature: number, units: UnitSystem): BackwardPlan | undefined {
  const ready = readyOn(Math.floor(tasteOn), temperature, units);
  if (ready === undefined) return undefined;
  const conditioningDays = ready - Math.floor(tasteOn);
  const packageBy = Math.floor(tasteOn) - conditioningDays;
  return { brewBy: packageBy - daysFromEndToPackaging - Math.ceil(fermentationDays), packageBy, conditioningDays };
}

/** The function by itself, since all of them would make the screen seven times as heavy. */
function readyOn(...typed: readonly unknown[]): number | undefined {
  const answer = callScalar(packReady, typed);
  return typeof answer === "number" ? answer : undefined;
}
