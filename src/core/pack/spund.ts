import { BrewingError } from "../brewing-error";
import { volumesPerPoint } from "./bottle-check";
import { litreBarPerMoleKelvin } from "./closed-bottle";
import { residualVolumes } from "./residual";
import { equilibriumGaugeBar, molesOfVolumes } from "./solubility";

/** A vessel that is closed while the beer still ferments. */
export interface Closing {
  /** Carbonation aimed at, volumes. */
  readonly co2Volumes: number;
  /** The warmest that the beer will be in the closed vessel, 0 to 40. */
  readonly temperatureC: number;
  readonly atmosphereBar: number;
  /** Free above the beer, % of what the vessel holds; carbon dioxide fills it when it is closed. */
  readonly headspacePercent: number;
  /** Gravity at which fermentation will end. */
  readonly expectedGravity: number;
}

/** Fermentation may end lower than expected: the vessel must bear so many points more. */
export const pointsInReserve = 2;

/** Pressure in the closed vessel in the end, bar, with so many points more than expected. */
export const closedGaugeBar = ({ co2Volumes, temperatureC, atmosphereBar }: Closing, pointsMore: number): number =>
  equilibriumGaugeBar(co2Volumes + volumesPerPoint * pointsMore, temperatureC, atmosphereBar);

/**
 * Gravity at which to close the vessel, so that what is still to ferment carbonates the beer. A balance of carbon dioxide:
 * what fermentation makes after closing is what the beer holds in the end, less what it held in the open, and what the
 * space above it takes up as the pressure rises (ideal gas). Half a volume for each point, as `checkBottle` has it.
 *
 * @throws BrewingError "impossible" when the beer holds as much in the open
 */
export function gravityToClose(closing: Closing): number {
  const { co2Volumes, temperatureC, atmosphereBar, headspacePercent, expectedGravity } = closing;
  const open = residualVolumes(temperatureC, atmosphereBar);
  if (co2Volumes <= open)
    throw new BrewingError(
      "impossible",
      `co2 is ${co2Volumes.toFixed(2)} volumes, but in an open vessel the beer already holds ${open.toFixed(2)} at this temperature: leave it open`,
    );
  const spacePerLitre = headspacePercent / (100 - headspacePercent);
  const intoSpace = (closedGaugeBar(closing, 0) * spacePerLitre) / (litreBarPerMoleKelvin * (temperatureC + 273.15));
  return expectedGravity + (co2Volumes - open + intoSpace / molesOfVolumes(1)) / volumesPerPoint / 1000;
}
