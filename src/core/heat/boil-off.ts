import { waterKgPerL20C } from "../wort/density";

/** Heat that turns a kilogram of boiling water into steam, kJ (NIST steam tables, NISTIR 5078, 100 °C; 0.6 % more at 95 °C). */
export const evaporationKjPerKg = 2257;

/**
 * Water that boils away in an hour, L as measured cold: the power that arrives over the heat of evaporation. What walls and
 * surface lose otherwise belongs in the efficiency.
 *
 * @param efficiencyPercent share of the power that makes steam, above 0 to 100 %
 */
export const boilOffLPerHour = (powerKw: number, efficiencyPercent: number): number =>
  (3600 * powerKw * efficiencyPercent) / 100 / evaporationKjPerKg / waterKgPerL20C;
