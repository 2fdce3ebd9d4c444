import { calciumCarbonateMgPerMeq } from "./acid";
import { molar } from "./ions";

const calciumOxideMolarMass = 56.0774;
/** A grain is 64.79891 mg; a US gallon 3.785411784 L, an imperial one 4.54609 L (exact, NIST SP 811). */
const grainMg = 64.79891;

/**
 * How much of each unit of a water report is one milliequivalent in a litre. Degrees: German 10 mg/L of CaO, French
 * 10 mg/L, Clark (English) a grain in an imperial gallon, and gpg a grain in a US gallon of CaCO3; mmol of calcium and magnesium together.
 */
export const unitsPerMeq = {
  dH: calciumOxideMolarMass / 2 / 10,
  fH: calciumCarbonateMgPerMeq / 10,
  Clark: (calciumCarbonateMgPerMeq * 4.54609) / grainMg,
  gpg: (calciumCarbonateMgPerMeq * 3.785411784) / grainMg,
  CaCO3: calciumCarbonateMgPerMeq,
  meq: 1,
  bicarbonate: molar.bicarbonate,
  mmol: 0.5,
} as const;

export type WaterUnit = keyof typeof unitsPerMeq;
export const waterUnits = Object.keys(unitsPerMeq) as readonly WaterUnit[];

/** An alkalinity or a hardness in another unit. */
export const convertedHardness = (amount: number, from: WaterUnit, to: WaterUnit): number => (amount * unitsPerMeq[to]) / unitsPerMeq[from];
