import { BrewingError } from "../brewing-error";
import { heatKjPerLitreKelvin } from "./water-heat";

export interface Chiller {
  readonly tapTemperatureC: number;
  readonly flowLPerMinute: number;
  /** Heat that the coil passes on for each degree between wort and water: its surface times its coefficient, kW/K. */
  readonly coilKwPerK: number;
}

/**
 * Share of the difference between wort and tap water that the cooling water takes up on its way through the coil,
 * 0 to 1: 1 - exp(-UA / (w c)), for wort that is stirred and so has one temperature.
 */
function coilEffectiveness({ flowLPerMinute, coilKwPerK }: Chiller): number {
  return 1 - Math.exp(-coilKwPerK / ((flowLPerMinute / 60) * heatKjPerLitreKelvin));
}

/**
 * Minutes that an immersion coil takes to cool stirred wort: batch cooling with a coil in the tank and cooling water
 * that warms up on the way (D. Q. Kern, Process Heat Transfer, 1950, ch. 18). The wort's distance from the tap
 * temperature shrinks by the same share every minute.
 *
 * @param volumeL cold volume of the wort
 * @throws BrewingError "impossible" when the wort is already colder than wanted; "unsolvable" when it is to become as
 *   cold as the tap water or colder
 */
export function chillingMinutes(volumeL: number, fromC: number, toC: number, chiller: Chiller): number {
  if (toC > fromC) throw new BrewingError("impossible", "to is above from: there is nothing to chill (to warm it, see GYLE.HEAT.WARM)");
  if (toC <= chiller.tapTemperatureC) {
    throw new BrewingError(
      "unsolvable",
      "to must be above tap_temperature: tap water cannot cool wort below itself; stop a few degrees above it and let a cold room or iced water do the rest",
    );
  }
  const ratePerMinute = (chiller.flowLPerMinute * coilEffectiveness(chiller)) / volumeL;
  return Math.log((fromC - chiller.tapTemperatureC) / (toC - chiller.tapTemperatureC)) / ratePerMinute;
}
