import { ionNames, type Ion, type Water } from "../../core/water/ions";
import type { Context } from "../describe";

const formulas: Readonly<Record<Ion, string>> = {
  calcium: "Ca",
  magnesium: "Mg",
  sodium: "Na",
  chloride: "Cl",
  sulfate: "SO4",
  bicarbonate: "HCO3",
};

/** "calcium (Ca)": what stands before its mg/L. */
export const ionLabel = (ion: Ion): string => `${ion} (${formulas[ion]})`;

/** The answer of IONS and BLEND: six rows, ion and mg/L. */
export const ionRows = (water: Water, { show }: Context): (string | number)[][] =>
  ionNames.map((ion) => [ionLabel(ion), show("concentration", water[ion])]);

export const ionColumns = ["ion", "mg/L"] as const;
