import type { Source } from "../describe";

/** Shared by every function that turns carbonation into pressure. */
export const solubilityEquation = "S = 10 exp(−10.73797 + 2617.25 / T) g per L and bar, T in K; 1 volume = 1.977 g/L";

export const solubilitySources: readonly Source[] = [
  { cite: "Henry's law with van 't Hoff's temperature", where: "coefficients in brewing use, from memory; compared with a published keg table, 32 to 70 °F: within 4.2 %" },
  { cite: "R. Sander, Atmospheric Chemistry and Physics 23, 2023", where: "carbon dioxide in water: 6 to 12 % more soluble at 25 to 45 °C, so warm beer is reckoned with more pressure" },
  { cite: "R. A. Speers and A. J. MacIntosh, Journal of the ASBC, 2013", where: "abstract: the origin of the charts in use is unknown, and solubility depends on alcohol and extract" },
];
