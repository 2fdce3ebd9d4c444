/** Where `residualVolumes` may be used, °C: a published table covers 0 to 22, the same curve is carried on to 30. */
export const residualRange = { from: 0, to: 30, by: "the curve for leftover carbon dioxide" } as const;

/**
 * Carbon dioxide that stays in beer fermented under an airlock, volumes.
 *
 * 3.0378 − 0.050062 F + 0.00026555 F², F in °F (M. Hall, Zymurgy, 1995; from memory, and it reproduces the table of
 * D. Draper's priming article within 0.02 for 0 to 22 °C). It falls with temperature over the whole range.
 *
 * @param temperatureC the warmest the beer has been since it finished fermenting, 0 to 30: cooling it later brings
 *   no gas back
 */
export function residualVolumes(temperatureC: number): number {
  const fahrenheit = temperatureC * 1.8 + 32;
  return 3.0378 - 0.050062 * fahrenheit + 0.00026555 * fahrenheit ** 2;
}
