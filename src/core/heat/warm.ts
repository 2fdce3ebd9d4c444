import { BrewingError } from "../brewing-error";
import { heatKjPerLitreKelvin } from "./water-heat";

/**
 * Minutes that a heater takes to warm water or wort: heat over the power that arrives in the liquid. What the kettle
 * itself takes up, and what steams off towards the boil, belongs in the efficiency.
 *
 * @param volumeL cold volume
 * @param powerKw what the heater draws
 * @param efficiencyPercent share of it that ends up in the liquid, above 0 to 100 %
 * @throws BrewingError "impossible" when the liquid is already warmer than wanted
 */
export function warmingMinutes(volumeL: number, fromC: number, toC: number, powerKw: number, efficiencyPercent: number): number {
  if (toC < fromC) throw new BrewingError("impossible", "to is below from: there is nothing to warm (to cool wort, see GYLE.HEAT.CHILL)");
  const heatKj = volumeL * heatKjPerLitreKelvin * (toC - fromC);
  return heatKj / ((powerKw * efficiencyPercent) / 100) / 60;
}
