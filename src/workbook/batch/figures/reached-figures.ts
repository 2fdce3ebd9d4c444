import { gravityAllowance } from "../gravity-allowance";
import type { BatchContents } from "../contents";
import { askNumber, askTable, askText, column } from "./ask";
import { colourScale, maltRows, type PlannedFigures } from "./planned-figures";

/** What a batch sheet shows as reached; undefined where it would be blank or show an error. */
export interface ReachedFigures {
  /** By the reading; undefined before there is one. */
  readonly og: number | undefined;
  /** Gravity of the newest reading, finished or not. */
  readonly gravityNow: number | undefined;
  /** Only once the readings agree, as the alcohol. */
  readonly fg: number | undefined;
  readonly abv: number | undefined;
  readonly ibu: number | undefined;
  readonly colour: number | undefined;
  readonly verdict: string;
}

/** The figures that follow from a batch's own readings, never from figures that somebody else computed. */
export function reachedFigures(batch: BatchContents, planned: PlannedFigures): ReachedFigures {
  const { kit, units, wort, volume } = batch;
  const measured = askNumber("WORT.HYDROMETER", wort.reading, wort.sampleTemperature, kit.hydrometerCalibratedAt, wort.scale, units);
  const og = trustedOriginalGravity(batch, planned, measured);
  const { times, gravities } = logOf(batch);
  const expected = askNumber("YEAST.FINISH", og, batch.yeast.attenuationPercent);
  const verdict =
    times.length === 0 ? "" : askText("LOG.STEADY", column(times), column(gravities), 0.001, expected, og ?? null, countFrom(batch));
  const isAtRest = verdict === "steady" || verdict === "stalled";
  const newest = times.indexOf(Math.max(...times));
  const gravityNow = newest < 0 ? undefined : gravities[newest];
  const share = wort.volume === "" ? undefined : wort.volume / volume;
  return {
    og: measured === undefined ? undefined : og,
    gravityNow,
    fg: isAtRest ? gravityNow : undefined,
    abv: gravityNow === undefined || !isAtRest ? undefined : askNumber("BEER.ABV", og, gravityNow),
    ibu: planned.ibu === undefined || share === undefined ? undefined : planned.ibu / share,
    colour:
      planned.gravityVolume === undefined || planned.colour === undefined || share === undefined
        ? undefined
        : askNumber("WORT.COLOUR", maltRows(batch), planned.gravityVolume * share, colourScale(batch), units),
    verdict,
  };
}

/** Of a day without a time its end, as on the sheet. */
function countFrom({ dryHoppedOn }: BatchContents): number | null {
  if (dryHoppedOn === "" || dryHoppedOn <= 0) return null;
  return Number.isInteger(dryHoppedOn) ? dryHoppedOn + 1 : dryHoppedOn;
}

/** Extract and volume fix the gravity, so a reading far from them is doubted, as the sheet does; of a mash only what no grain can give. */
function trustedOriginalGravity(batch: BatchContents, planned: PlannedFigures, measured: number | undefined): number | undefined {
  const { method, wort, volume, malt, units } = batch;
  if (measured === undefined || planned.og === undefined || planned.gravityVolume === undefined) return measured ?? planned.og;
  const share = wort.volume === "" || wort.volume <= 0 ? 1 : wort.volume / volume;
  const byMalt = 1 + (planned.og - 1) / share;
  if (method === "all-grain" && malt.some(({ handling }) => handling === "mash" || handling === "steep")) {
    return askNumber("WORT.EFFICIENCY", maltRows(batch), planned.gravityVolume * share, measured, units) === undefined ? byMalt : measured;
  }
  return Math.abs(measured - byMalt) > gravityAllowance ? byMalt : measured;
}

/** Readings as gravities at 20 °C; one that cannot be corrected (no temperature) is left out, as on the sheet. */
function logOf({ readings, kit, units }: BatchContents): { times: number[]; gravities: number[] } {
  if (readings.length === 0) return { times: [], gravities: [] };
  const corrected = askTable(
    "WORT.HYDROMETER",
    column(readings.map(({ reading }) => reading)),
    column(readings.map(({ sampleTemperature }) => sampleTemperature)),
    kit.hydrometerCalibratedAt,
    column(readings.map(({ scale }) => scale)),
    units,
  );
  const usable = readings
    .map(({ when }, index) => ({ when, gravity: corrected[index]?.[0] }))
    .filter((row): row is { when: number; gravity: number } => typeof row.gravity === "number");
  return { times: usable.map(({ when }) => when), gravities: usable.map(({ gravity }) => gravity) };
}
