import type { Source } from "../describe";

/** Shared by every function that turns carbonation into pressure. */
export const solubilityEquation =
  "p − vapour = CO2 × 1.977 / S × (1 + (0.0052 + 0.00015 t) CO2); S = 0.95 × 2443 / 10 H g per L and bar, ln (H / MPa) = −6.8346 + 12817 / T − 3.7668e6 / T² + 2.997e8 / T³, T in K; vapour = 0.0061094 exp(17.625 t / (t + 243.04)) bar, t in °C";

export const localAir = "air = 1.01325 (1 − 0.0065 altitude (m) / 288.15)^5.25588 bar";

export const solubilitySources: readonly Source[] = [
  {
    cite: "J. J. Carroll, J. D. Slupsky and A. E. Mather, Journal of Physical and Chemical Reference Data 20, 1991",
    where: "carbon dioxide in water, 0 to 160 °C, below 1 MPa: the equation of the abstract",
  },
  {
    cite: "American Society of Brewing Chemists, chart of carbon dioxide in beer",
    where:
      "by a keg table that fits it, 32 to 70 °F, whose author is not named: ordinary beer takes up 0.95 of that: 0.3 to 0.5 psi above that table up to 44 °F, 0.8 psi at 50 °F, up to 2.9 psi at 70 °F, where the table has beer take up as much as water; never below it",
  },
  {
    cite: "ISO 2533:1975, Standard atmosphere; O. A. Alduchov and R. E. Eskridge, Journal of Applied Meteorology 35, 1996",
    where: "air pressure against altitude; water vapour",
  },
  {
    cite: "I. R. Krichevsky and J. S. Kasarnovsky, Journal of the American Chemical Society 57, 1935",
    where: "a gas that is not ideal; coefficients from memory",
  },
  {
    cite: "R. A. Speers and A. J. MacIntosh, Journal of the ASBC, 2013",
    where: "abstract: the origin of the charts in use is unknown, and solubility depends on alcohol and extract",
  },
];
