import { BrewingError } from "../brewing-error";
import { waterKgPerL20C } from "../wort/density";

/**
 * Heat that a kilogram of malt takes up, against a kilogram of water: 0.40, as at 3 to 4 % moisture (Pauls and Whites,
 * Brewing Room Book, 1984/85; 0.38 bone dry, 0.42 at 8 %). The heat of slaking (1 to 3 °C) and a cold mash tun
 * (which takes about as much) are left out.
 */
export const maltHeatAgainstWater = 0.4;

/** Grain and its water as kilograms of water that would take up as much heat. */
const waterEquivalentKg = (grainMassKg: number, waterVolumeL: number): number =>
  maltHeatAgainstWater * grainMassKg + waterVolumeL * waterKgPerL20C;

/**
 * Temperature of the water to pour on the grain, °C: what the grain gains, the water loses.
 *
 * @param waterVolumeL cold volume
 * @throws BrewingError "impossible" when the water would have to boil
 */
export function strikeTemperatureC(grainMassKg: number, waterVolumeL: number, grainTemperatureC: number, targetC: number): number {
  const strikeC = targetC + (maltHeatAgainstWater * grainMassKg * (targetC - grainTemperatureC)) / (waterVolumeL * waterKgPerL20C);
  if (strikeC > 100)
    throw new BrewingError(
      "impossible",
      `water_volume is too little: the water would need ${strikeC.toFixed(0)} °C (${(strikeC * 1.8 + 32).toFixed(0)} °F); take more water, or check grain_mass and its unit`,
    );
  return strikeC;
}

/**
 * Hot water that lifts a mash from one temperature to the next, litres cold volume.
 *
 * @throws BrewingError "impossible" when the mash is not to be warmed, or the water is no hotter than the target
 */
export function stepVolumeL(grainMassKg: number, waterVolumeL: number, fromC: number, targetC: number, additionC: number): number {
  if (targetC < fromC) throw new BrewingError("impossible", "target is below from: hot water cannot cool the mash");
  if (additionC <= targetC) throw new BrewingError("impossible", "addition_temperature must be above target");
  return (waterEquivalentKg(grainMassKg, waterVolumeL) * (targetC - fromC)) / (additionC - targetC) / waterKgPerL20C;
}
