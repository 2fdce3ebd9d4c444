import { BrewingError } from "../brewing-error";

/** Cold beer: density, kg/m³, and viscosity, Pa s (about 1.6 times that of water, whose value at 4 °C is 1.57e-3; from memory). */
export const density = 1010;
export const viscosity = 2.5e-3;
export const gravityMPerS2 = 9.80665;

/** Where flow turns turbulent; between 2300 and 4000 nobody can say, and the turbulent value is taken. */
export const criticalReynolds = 2300;

/** Numbers of `frictionFactor`: below the critical Reynolds number, and above it. */
export const friction = { smooth: 64, rough: 0.316, power: -0.25 } as const;

/**
 * Darcy's friction factor of a smooth pipe: 64 / Re in laminar flow (Hagen and Poiseuille), 0.316 Re^-0.25 in turbulent
 * flow (Blasius; within 4 % of Prandtl's law from 4000 to 100000). Standard equations: F. M. White, Fluid Mechanics,
 * chapter 6.
 */
export function frictionFactor(reynolds: number): number {
  return reynolds < criticalReynolds ? friction.smooth / reynolds : friction.rough * reynolds ** friction.power;
}

/** Pressure that a metre of line takes up, bar (Darcy and Weisbach: f ρ v² / 2 D). */
export function lineBarPerM(innerDiameterMm: number, flowLPerMin: number): number {
  const diameterM = innerDiameterMm / 1000;
  const speedMPerS = flowLPerMin / 60000 / ((Math.PI * diameterM ** 2) / 4);
  const reynolds = (density * speedMPerS * diameterM) / viscosity;
  return (frictionFactor(reynolds) * density * speedMPerS ** 2) / (2 * diameterM) / 1e5;
}

/**
 * Length of beer line that uses up the pressure on a keg at the flow wanted, m. Taps and fittings are left out: they
 * slow the beer a little more, so that it pours gently rather than foams.
 *
 * @param heightM how far the tap is above the middle of the keg; negative when below
 * @throws BrewingError "impossible" when the pressure does not lift the beer to the tap
 */
export function balancedLineM(gaugeBar: number, heightM: number, innerDiameterMm: number, flowLPerMin: number): number {
  const leftBar = gaugeBar - (density * gravityMPerS2 * heightM) / 1e5;
  if (leftBar <= 0) throw new BrewingError("impossible", "pressure is too low for height: it does not lift the beer to the tap");
  return leftBar / lineBarPerM(innerDiameterMm, flowLPerMin);
}
