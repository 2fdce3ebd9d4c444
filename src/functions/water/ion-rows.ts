import { ionNames, type Ion, type Water } from "../../core/water/ions";
import type { Context } from "../describe";

const formulas: Readonly<Record<Ion, string>> = { calcium: "Ca", magnesium: "Mg", sodium: "Na", chloride: "Cl", sulfate: "SO4", bicarbonate: "HCO3" };

/** The answer of IONS and BLEND: six rows, ion and mg/L. */
export const ionRows = (water: Water, { show }: Context): (string | number)[][] => ionNames.map((ion) => [`${ion} (${formulas[ion]})`, show("concentration", water[ion])]);

export const ionColumns = ["ion", "mg/L"] as const;
