export interface Losses {
  readonly boilMinutes: number;
  /** Water that boils away in an hour, as litres of cold water. */
  readonly evaporationLPerHour: number;
  /** Wort left behind in the kettle with hops and trub, litres at 20 °C. */
  readonly kettleLossL: number;
  /** Grain that is mashed or steeped, and what it keeps. */
  readonly grainMassKg: number;
  readonly absorptionLPerKg: number;
  /** How much the hot wort shrinks on cooling from boiling to 20 °C, % of its hot volume. */
  readonly shrinkagePercent: number;
}

/** Volumes in the order of the job, litres at 20 °C except the hot one. */
export interface WaterBudget {
  readonly collectL: number;
  readonly beforeBoilL: number;
  readonly afterBoilHotL: number;
  readonly afterChillingL: number;
  readonly intoFermenterL: number;
}

/**
 * What to collect so that enough is left: the volumes of a brew day, worked back from the fermenter.
 *
 * Litres at 20 °C stand for mass, so that losses simply add up; only "after the boil, hot" is the volume that a dip
 * stick shows in boiling wort. The default shrinkage of 4.0 % is that of water from 100 to 20 °C:
 * 1 - 958.4 / 998.2 (Kell, J. Chem. Eng. Data 20, 1975).
 */
export function waterBudget(intoFermenterL: number, losses: Losses): WaterBudget {
  const afterChillingL = intoFermenterL + losses.kettleLossL;
  const afterBoilHotL = afterChillingL / (1 - losses.shrinkagePercent / 100);
  const beforeBoilL = afterChillingL + (losses.evaporationLPerHour * losses.boilMinutes) / 60;
  const collectL = beforeBoilL + losses.grainMassKg * losses.absorptionLPerKg;
  return { collectL, beforeBoilL, afterBoilHotL, afterChillingL, intoFermenterL };
}
