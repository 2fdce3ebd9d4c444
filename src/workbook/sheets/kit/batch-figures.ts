import type { BatchCell } from "../../batch/fields/cells";
import { BrewingError } from "../../../core/brewing-error";
import { coilKwPerK } from "../../../core/heat/coil";
import { boiledAwayL, dissolvedOf, grainKg } from "../../../core/water/budget";
import type { Fermentable } from "../../../core/wort/fermentables";
import { quantity, type QuantityName } from "../../../functions/quantities";
import { unitsOf, type BatchSheet } from "../../batch/read/batch-sheets";
import type { LearnedKey } from "./kit-rows";

/** What one batch tells of the kit it was brewed on, in the core's units; a figure that its sheet does not tell is left out. */
export type BatchFigures = Partial<Record<LearnedKey, number>>;

export function batchFigures(sheet: BatchSheet): BatchFigures {
  const units = unitsOf(sheet);
  const core = (name: BatchCell, measure?: QuantityName): number | undefined => {
    const value = sheet.knownNumber(name);
    return value === undefined ? undefined : measure ? quantity(measure).toCore(value, units) : value;
  };
  const figures = {
    boilOff: boilOff(sheet, core),
    kettleLoss: notLess(core("kettle_left", "volume"), 0),
    grainEfficiencyPercent: notLess(core("before_efficiency"), 0) ?? notLess(core("runnings_efficiency"), 0) ?? core("efficiency_reached"),
    absorption: notLess(core("absorption_seen", "absorption"), 0) ?? notLess(core("runnings_kept", "absorption"), 0),
    deadSpace: notLess(core("tun_left", "volume"), 0),
    coilKwPerK: coil(sheet, core),
    bottlingLoss: bottlingLoss(core, sheet.text("into")),
  };
  return Object.fromEntries(Object.entries(figures).filter(([, value]) => value !== undefined));
}

/** What measuring errors have made less than can be teaches nothing. */
const notLess = (value: number | undefined, least: number): number | undefined =>
  value !== undefined && value >= least ? value : undefined;

type Core = (name: BatchCell, measure?: QuantityName) => number | undefined;

/**
 * L/h: by what was in the kettle before the boil where that was noted, so that what grain and tun kept is not put down to the boil. Else the water that went in, less what came out, for each hour of the boil. In went what was noted, else what the sheet said to collect, and what
 * dissolved in it brings its own volume; out came what was in the fermenter and what stayed in the kettle. With top-up water
 * the fermenter is filled to the mark, so that nothing can be learned.
 */
function boilOff(sheet: BatchSheet, core: Core): number | undefined {
  if (core("before_cold", "volume") !== undefined) {
    const seen = core("boil_off_seen", "volumePerHour");
    return seen !== undefined && seen > 0 ? seen : undefined;
  }
  const [collected, reached, minutes] = [
    core("collected", "volume") ?? core("water_collect", "volume"),
    core("volume_reached", "volume"),
    core("boil_minutes"),
  ];
  if (collected === undefined || !reached || !minutes || (core("top_up", "volume") ?? 0) > 0) return undefined;
  const bill = billOf(sheet);
  const isMash = sheet.has("mash_water");
  const kept =
    grainKg(bill) * (core("absorption", "absorption") || usualAbsorptionLPerKg) +
    (isMash && grainKg(bill) > 0 ? (core("tun_dead_space", "volume") ?? 0) : 0);
  const left = reached + (core("kettle_loss", "volume") ?? 0);
  const dissolved = dissolvedOf(bill, core("efficiency_reached") ?? core("grain_efficiency") ?? 0);
  const found = boiledAwayL(collected - kept, left, dissolved);
  return found !== undefined && found > 0 ? found / (minutes / 60) : undefined;
}

/** What a grain keeps where a sheet of an older plan does not say it: the default of GYLE.WATER.BUDGET. */
const usualAbsorptionLPerKg = 1;

function billOf(sheet: BatchSheet): Fermentable[] {
  const units = unitsOf(sheet);
  return sheet
    .block("malt")
    .flatMap(([mass, yieldPercent, handling]) =>
      typeof mass === "number" && typeof yieldPercent === "number" && isHandling(handling)
        ? [{ massKg: quantity("mass").toCore(mass, units), yieldPercent, handling }]
        : [],
    );
}

const isHandling = (word: unknown): word is Fermentable["handling"] =>
  word === "mash" || word === "steep" || word === "extract" || word === "sugar";

/** L: beer that was there, less what ended in full bottles. */
function bottlingLoss(core: Core, into: string): number | undefined {
  const [beer, filled, holds] = [core("beer_volume", "volume"), core("bottles_filled"), core("bottle_volume", "bottleVolume")];
  if (core("parts_total")) return undefined;
  if (into !== "bottles" || beer === undefined || !filled || !holds) return undefined;
  const lost = beer - (filled * holds) / 1000;
  return lost >= 0 ? lost : undefined;
}

/** kW/K, from the times noted beside the chilling and the line after it. */
function coil(sheet: BatchSheet, core: Core): number | undefined {
  const minutes = chillingMinutes(sheet);
  const [from, to, volume, tap, flow] = [
    core("boils_at", "temperature"),
    core("pitch_temperature", "temperature"),
    core("water_chilled", "volume"),
    core("tap_temperature", "temperature"),
    core("tap_flow", "flow"),
  ];
  if (!minutes || from === undefined || to === undefined || !volume || tap === undefined || !flow) return undefined;
  try {
    return coilKwPerK(
      [
        { minutes: 0, wortC: from },
        { minutes, wortC: to },
      ],
      volume,
      tap,
      flow,
    );
  } catch (problem) {
    // Times that no coil could bring about (a pause, a slip of the pen) teach nothing.
    if (problem instanceof BrewingError) return undefined;
    throw problem;
  }
}

function chillingMinutes(sheet: BatchSheet): number | undefined {
  const happened = sheet.block("happened").map(([time]) => time);
  const lines = sheet.block("timeline").map((cells) => String(cells[2] ?? ""));
  const at = lines.findIndex((words) => /^chill\b/i.test(words));
  const [begun, done] = [happened[at], happened[at + 1]];
  if (at < 0 || typeof begun !== "number" || typeof done !== "number") return undefined;
  // Past midnight the clock begins again.
  const minutes = ((((done - begun) % 1) + 1) % 1) * 24 * 60;
  return minutes > 0 && minutes < 12 * 60 ? minutes : undefined;
}
