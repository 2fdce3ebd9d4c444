import type { Covered, Source } from "../describe";

/** The sugar table behind every step between gravity and °P, as a source and as a range. */
export const sugarTable: Source = {
  cite: "F. J. Bates et al., Polarimetry, Saccharimetry and the Sugars, NBS Circular 440, 1942",
  where: "Table 114, apparent specific gravity 20/20 °C, 0 to 40 °Bx; our cubic through it, worst misfit 0.005 °P",
};

/** The density behind what a malt bill comes to. */
export const sugarSolutions: Source = {
  cite: "ICUMSA Specification SPS-4 (Bettin, Emmerich, Spieweck and Toth, 1998)",
  where: "density of sucrose solutions; what malt gives stands for sucrose",
};

const tableName = "the sugar table (NBS Circular 440, its curve carried on below 0 °P for dry beer)";

export const coveredPlato: Covered = { from: -5.5, to: 40, by: tableName };
/** 1.17875 is 40 °P. */
export const coveredGravity: Covered = { from: 0.98, to: 1.17875, by: tableName };
