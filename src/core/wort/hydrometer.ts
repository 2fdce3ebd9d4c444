import { BrewingError } from "../brewing-error";
import { bisect } from "./bisect";
import { sugarSolutionDensityKgPerM3, waterDensityKgPerM3 } from "./density";
import { gravityFromPlato } from "./plato";

export type HydrometerScale = "SG" | "P";

/** Volume expansion of soda-lime glass, per kelvin (from memory; handbooks give 25 to 27e-6). */
export const glassExpansionPerK = 25e-6;

/**
 * Specific gravity 20/20 °C of a sample from what a hydrometer shows in it.
 *
 * A spindle sinks until it has pushed away its own mass. The reading, taken at the wrong temperature, therefore stands
 * for a density at the sample's temperature, once the glass's own expansion is allowed for; the sugar content that has
 * this density there is the sample's sugar content, and its gravity at 20 °C follows (ICUMSA densities). The same road
 * turns a spindle marked for 60 °F or 15 °C into specific gravity 20/20. Beer is taken as sugar solution.
 *
 * @param reading as read: specific gravity 0.98 to 1.2 (temperature of calibration over the same) or -5 to 40 °P
 * @param sampleTemperatureC 0 to 70 °C
 * @param calibratedAtC 10 to 30 °C
 * @throws BrewingError "impossible" when the reading does not lie on the scale
 */
export function gravityFromHydrometer(reading: number, scale: HydrometerScale, sampleTemperatureC: number, calibratedAtC: number): number {
  refuseOffScale(reading, scale);
  const calibrationDensity =
    scale === "SG" ? reading * waterDensityKgPerM3(calibratedAtC) : sugarSolutionDensityKgPerM3(reading / 100, calibratedAtC);
  const sampleDensity = calibrationDensity * (1 - glassExpansionPerK * (sampleTemperatureC - calibratedAtC));
  const massFraction = bisect((w) => sugarSolutionDensityKgPerM3(w, sampleTemperatureC) - sampleDensity, -0.1, 0.6);
  return scale === "SG" ? sugarSolutionDensityKgPerM3(massFraction, 20) / waterDensityKgPerM3(20) : gravityFromPlato(100 * massFraction);
}

function refuseOffScale(reading: number, scale: HydrometerScale): void {
  if (scale === "SG" && (reading < 0.98 || reading > 1.2)) {
    const help = reading > 1.2 ? ` (${reading} looks like °P: set scale to "P")` : "";
    throw new BrewingError("impossible", `reading is ${reading}; on the SG scale it must be from 0.980 to 1.200${help}`);
  }
  if (scale === "P" && (reading < -5 || reading > 40)) {
    throw new BrewingError("impossible", `reading is ${reading}; on the P scale it must be from -5 to 40 °P`);
  }
}
