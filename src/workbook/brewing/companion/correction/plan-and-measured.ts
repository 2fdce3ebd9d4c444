import { bitternessModel } from "../../../batch/read/bitterness-model";
import { hopsIbu } from "../../../../functions/hops/ibu";
import { wortGravity } from "../../../../functions/wort/gravity";
import { boilLimits } from "../../../../functions/vocabulary";
import type { UnitSystem } from "../../../../functions/quantities";
import { ask } from "../ask";
import { unitsOf, type BatchSheet } from "../../../batch/read/batch-sheets";

/** Where the wort is: what can still be done hangs on it. */
export type Place = "kettle" | "fermenter";

export interface Wort {
  /** Cold, in the sheet's units. */
  readonly volume: number;
  readonly gravity: number;
}

/** What the plan wanted and what there is, with the means to tell what a correction does. */
export interface Missed {
  readonly place: Place;
  readonly units: UnitSystem;
  readonly planned: Wort;
  readonly measured: Wort;
  readonly plannedIbu: number | undefined;
  /** Bitterness of the beer if the wort ends at this volume, after boiling its hops so much longer. */
  readonly ibuAt: (volume: number, extraMinutes?: number) => number | undefined;
  /** Boiled away in an hour. */
  readonly boilOff: number;
}

/** Gravity within a hydrometer's error, volume within a stick's: on plan (common practice). */
export const gravitySlack = 0.002;
export const volumeSlack = 0.03;

/** Holds what was measured against the plan for that place; undefined while the sheet cannot tell the plan. */
export function missedPlan(sheet: BatchSheet, place: Place, measured: Wort): Missed | undefined {
  const units = unitsOf(sheet);
  const planned = plannedWort(sheet, place);
  if (!planned) return undefined;
  const hops = sheet.block("hops");
  const ibuAt = (volume: number, extraMinutes = 0): number | undefined => {
    const longer = hops.map(([mass, alpha, minutes]) => [
      mass,
      alpha,
      typeof minutes === "number" && mass !== "" ? Math.min(boilLimits.atMost, minutes + extraMinutes) : minutes,
    ]);
    // As the sheet calculates: with what hops gain in the stand and in the chilling.
    const after = [
      Number(sheet.number("boil_minutes")) + extraMinutes,
      ...(["stand_temperature", "stand_minutes", "chill_minutes", "pitch_temperature"] as const).map((name) =>
        sheet.has(name) ? sheet.value(name) : "",
      ),
    ];
    return ask(
      hopsIbu,
      longer,
      (Number(sheet.number("gravity_volume")) * volume) / planned.volume,
      sheet.value("kettle_gravity"),
      bitternessModel(sheet),
      sheet.value("boils_at"),
      units,
      ...after,
    ).value;
  };
  return { place, units, planned, measured, plannedIbu: ibuAt(planned.volume), ibuAt, boilOff: Number(sheet.number("boil_off")) };
}

/** In the kettle the wort is stronger than the beer will be where water is still to top it up. */
function plannedWort(sheet: BatchSheet, place: Place): Wort | undefined {
  const volume = Number(sheet.number(place === "kettle" ? "water_chilled" : "volume"));
  const gravity =
    place === "kettle"
      ? ask(wortGravity, sheet.block("malt"), volume, sheet.value("grain_efficiency"), unitsOf(sheet)).value
      : sheet.number("og_plan");
  return volume > 0 && typeof gravity === "number" ? { volume, gravity } : undefined;
}
