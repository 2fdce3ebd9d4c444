import { heated, type HopAcids } from "./isomerisation";

export interface Cooling {
  readonly fromC: number;
  /** Not above `fromC`. */
  readonly toC: number;
  readonly minutes: number;
  /** What the wort cools towards, below `toC`. */
  readonly surroundingsC: number;
}

/** Temperature of cooling wort, °C: it nears the surroundings exponentially (Newton's law of cooling). */
export function coolingTemperatureC({ fromC, toC, minutes, surroundingsC }: Cooling, minute: number): number {
  const left = (toC - surroundingsC) / (fromC - surroundingsC);
  return surroundingsC + (fromC - surroundingsC) * left ** (minutes === 0 ? 0 : minute / minutes);
}

/** So many that finer steps move the shares by less than 0.00005, even where four hours of cooling begin at 102 °C. */
const steps = 300;

/** The hop acids after the cooling: the exact solution for one temperature, step by step at each step's middle. */
export function cooled(acids: HopAcids, cooling: Cooling): HopAcids {
  const stepMinutes = cooling.minutes / steps;
  let now = acids;
  for (let step = 0; step < steps; step += 1) now = heated(now, stepMinutes, coolingTemperatureC(cooling, (step + 0.5) * stepMinutes));
  return now;
}
