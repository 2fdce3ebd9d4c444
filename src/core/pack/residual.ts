import { volumesAtGaugePressure } from "./solubility";

/** Where `residualVolumes` may be used, °C: as warm as any yeast ferments. */
export const residualRange = { from: 0, to: 40, by: "the solubility used for leftover carbon dioxide" } as const;

/**
 * Carbon dioxide that stays in beer fermented under an airlock, volumes: what it holds under the air pressure of the place,
 * all of it carbon dioxide and water vapour. Within 0.02 of the table in D. Draper's priming article (1990s) once that is
 * corrected: it is the solubility in water, without the vapour. It falls with temperature over the whole range.
 *
 * @param temperatureC the warmest the beer has been since it finished fermenting, 0 to 40: cooling it later brings no gas back
 * @param atmosphereBar of the place
 */
export const residualVolumes = (temperatureC: number, atmosphereBar: number): number =>
  volumesAtGaugePressure(0, temperatureC, atmosphereBar);
