/**
 * Volume, litres, that a kilogram of dry grain takes up beside the water in a mash: its solid has a density of 1.45 to 1.47 kg/L
 * (C. S. Chang, Cereal Chem. 65, 1988, p. 13, gas pycnometer: maize 1.45, sorghum 1.46, wheat 1.47; malt is taken to be
 * alike), so 0.68 to 0.69; rounded up, since it is to fit.
 */
export const grainLPerKg = 0.7;

/** How much more room hot water takes than the same water at 20 °C: 998.2 / 958.4 when it boils, 998.2 / 968.6 at 85 °C (Kell 1975); both rounded up. */
export const boilingOverCold = 1.042;
export const mashingOverCold = 1.031;
