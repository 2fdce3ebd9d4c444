import { waterVapourBar } from "./local-air";
import { carbonDioxideInWater, molesOfVolumes, molesPerLitreAndBar, realBar } from "./solubility";

/** Share of a bottle that is left free under the cap: a finger's breadth of a half-litre bottle. */
export const usualHeadspacePercent = 5;
/** Less than this and warm beer would fill the bottle. */
export const headspaceLimits = { atLeast: 2, atMost: 50 } as const;

/**
 * Air is sealed in cold: so there is more of it, and the beer has most room to grow. The cautious end of what brewers do.
 */
export const filledAtC = 4;

export const litreBarPerMoleKelvin = 0.0831446;

/**
 * Henry's constant of nitrogen in water, ln (H / MPa) in powers of 1/T (T. R. Rettich, R. Battino and E. Wilhelm, Journal
 * of Solution Chemistry 13, 335, 1984). It stands for all of the air: oxygen, which dissolves twice as well and which yeast
 * may eat, is counted as if it stayed.
 */
export const airInWater = [0.461108642, 6386.6654, -1139789.2] as const;

/** Numbers of `beerGrowth`. */
export const growth = { at0: 124500, perC: 987 } as const;

/**
 * How much a litre of beer has grown since it was filled, L: as water does by Kell's equation (`waterDensityKgPerM3`), in a
 * form that fits a cell; within 0.1 mL of it.
 */
export const beerGrowth = (temperatureC: number): number => (temperatureC - filledAtC) ** 2 / (growth.at0 + growth.perC * temperatureC);

/**
 * Gauge pressure in a closed bottle, bar, by a balance of what is in it: the carbon dioxide shares itself out between beer
 * and neck, and so does the air of the neck, at the pressure and temperature of filling; beer grows when it warms and
 * presses the neck together; water vapour adds its own. The bottle itself is taken as stiff.
 *
 * @param volumes all carbon dioxide in the bottle, volumes of the beer
 * @param temperatureC 0 to 60
 * @param atmosphereBar of the place, where the bottle is filled and stands
 * @param headspacePercent free under the cap when filled, % of what the bottle holds; 2 to 50
 */
export function bottleGaugeBar(volumes: number, temperatureC: number, atmosphereBar: number, headspacePercent: number): number {
  const neckPerLitre = headspacePercent / (100 - headspacePercent);
  const neckNow = neckPerLitre - beerGrowth(temperatureC);
  /** Moles that the neck holds per bar, for each litre of beer. */
  const neckHolds = neckNow / (litreBarPerMoleKelvin * (temperatureC + 273.15));
  const gasBar = molesOfVolumes(volumes) / (molesPerLitreAndBar(carbonDioxideInWater, temperatureC) + neckHolds);
  const airSealedIn = ((atmosphereBar - waterVapourBar(filledAtC)) * neckPerLitre) / (litreBarPerMoleKelvin * (filledAtC + 273.15));
  const airBar = airSealedIn / (molesPerLitreAndBar(airInWater, temperatureC) + neckHolds);
  return realBar(gasBar, volumes, temperatureC) + airBar + waterVapourBar(temperatureC) - atmosphereBar;
}
