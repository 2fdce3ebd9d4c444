import { waterDensityKgPerM3, waterDivisor, waterPowers } from "../../../../core/wort/density";
import type { UnitSystem } from "../../../../functions/quantities";

/**
 * A volume as it will be at 20 °C, from the volume and the temperature at which it was read: water's own density, which wort follows to
 * within a tenth of a per cent of the volume (`core/wort/density.ts`).
 *
 * @param temperature name of a cell that may be empty: then the volume was read cold
 */
export function coldVolume(volume: string, temperature: string, units: UnitSystem): string {
  const celsius = units === "us" ? `((${temperature}-32)/1.8)` : temperature;
  const powers = waterPowers.map((factor, power) =>
    power === 0 ? String(factor) : `${factor < 0 ? "" : "+"}${String(factor).toUpperCase()}*${celsius}^${power}`,
  );
  const density = `(${powers.join("")})/(1+${waterDivisor}*${celsius})`;
  return `${volume}*IF(ISNUMBER(${temperature}),${density}/${waterDensityKgPerM3(20)},1)`;
}
