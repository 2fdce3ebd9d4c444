/**
 * Carbonic acid in water at 20 °C (293.15 K), by the equations of L. N. Plummer and E. Busenberg (Geochim. Cosmochim. Acta
 * 46, 1982, 1011; Table 1, as remembered, and they give the 6.35, 10.33, 1.47 and 8.48 at 25 °C that textbooks print):
 * 10^-6.382 and 10^-10.376 for its two steps, 10^-1.407 mol/(L atm) for carbon dioxide from air, 10^-8.453 for calcite.
 * Concentrations stand for activities, which in tap water moves a dose by about a hundredth.
 */
export const firstStep = 10 ** -6.382;
const secondStep = 10 ** -10.376;
const henryMolPerLAtm = 10 ** -1.407;
const calcite = 10 ** -8.453;

/** Carbon dioxide in the air: 420 parts in a million (NOAA, Mauna Loa, yearly means of 2022 and 2023). */
const airAtm = 420e-6;

/**
 * Ca²⁺ times HCO3⁻ squared, (mol/L)³, of water that stands in air over chalk: CaCO3 + CO2 + H2O ⇌ Ca²⁺ + 2 HCO3⁻
 * (W. Stumm and J. J. Morgan, Aquatic Chemistry, the open system with calcite). Pure water takes 0.52 mmol/L, 52 mg/L.
 */
export const chalkSaturation = (calcite * firstStep * henryMolPerLAtm * airAtm) / secondStep;

/** The usual pH of water from the tap: carbonate and free carbon dioxide are both next to nothing beside bicarbonate. */
export const tapPh = 7.5;

/** All inorganic carbon of a tap water with so much alkalinity, both mol/L: bicarbonate, and a fourteenth of it as dissolved gas. */
export const carbonOfTapWater = (alkalinityMolPerL: number): number => alkalinityMolPerL * (1 + 10 ** -tapPh / firstStep);

/** Alkalinity that is left at a hydrogen ion concentration, mol/L: bicarbonate less free acid. Below pH 8 there is hardly any carbonate. */
export const alkalinityLeft = (carbonMolPerL: number, hydrogen: number): number =>
  (carbonMolPerL * firstStep) / (hydrogen + firstStep) - hydrogen;

/** The hydrogen ion concentration, mol/L, at which that alkalinity is left: `alkalinityLeft` turned round, a quadratic; no less than in the tap water. */
export function hydrogenAt(carbonMolPerL: number, alkalinityMolPerL: number): number {
  const half = (alkalinityMolPerL + firstStep) / 2;
  const carbonDioxide = firstStep * (carbonMolPerL - alkalinityMolPerL);
  return Math.max(10 ** -tapPh, carbonDioxide / (Math.sqrt(half ** 2 + carbonDioxide) + half));
}
