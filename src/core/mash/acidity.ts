import { BrewingError } from "../brewing-error";
import { acidMolPerL, acidNames, acids, calciumCarbonateMgPerMeq, equivalentsPerMole, type AcidName } from "../water/acid";
import { residualAlkalinityMgPerL, mashLoss } from "../water/alkalinity";
import { alkalinityLeft, carbonOfTapWater, firstStep } from "../water/carbonate";
import { salts } from "../water/ions";
import { bisect } from "../wort/bisect";
import type { MashedMalt } from "./malts";

export const baseNames = ["baking soda", "slaked lime"] as const;
export type BaseName = (typeof baseNames)[number];
/** What a brewer corrects a mash with: acids in mL, bases in g. */
export type Corrector = AcidName | BaseName;
export const correctors: readonly Corrector[] = [...acidNames, ...baseNames];

export const isAcid = (name: Corrector): name is AcidName => name in acids;

export interface Mash {
  readonly malts: readonly MashedMalt[];
  readonly waterL: number;
  /** As CaCO3. */
  readonly alkalinityMgPerL: number;
  readonly calciumMgPerL: number;
  readonly magnesiumMgPerL: number;
}

/** The pH that the balance is asked about; beyond it the malts' lines and the carbonates' short form say nothing. */
export const coveredPh = { from: 4.3, to: 6.8 } as const;

/** Millimoles in a millilitre of acid, or in a gram of base. */
const millimoles = (name: Corrector, strengthPercent: number | undefined): number =>
  isAcid(name) ? acidMolPerL(name, strengthPercent ?? acids[name].usualPercent) : 1000 / salts[name].molarMass;

/**
 * Hydrogen ions that a molecule gives off at a pH; a base takes them. The calcium of lime meets the phosphate of the malt
 * as that of the water does, and gives a part back.
 */
function hydrogenPerMole(name: Corrector, pH: number): number {
  if (isAcid(name)) return equivalentsPerMole(name, pH);
  return name === "slaked lime" ? 2 / mashLoss.calcium - 2 : firstStep / (10 ** -pH + firstStep) - 1;
}

/**
 * Hydrogen ions that are over at a pH, milliequivalents: what each malt gives off on its way from its own pH, and calcium
 * and magnesium from the malt's phosphate (P. Kolbach 1953), less what the water's alkalinity takes. All carbon dioxide
 * stays dissolved, as in `core/water/acid.ts`. It rises with the pH.
 */
function hydrogenOverMeq({ malts, waterL, alkalinityMgPerL, calciumMgPerL, magnesiumMgPerL }: Mash, pH: number): number {
  const fromMalts = malts.reduce((sum, malt) => sum + malt.massKg * malt.bufferMeqPerKg * (pH - malt.pH), 0);
  const fromHardness = -residualAlkalinityMgPerL(0, calciumMgPerL, magnesiumMgPerL) / calciumCarbonateMgPerMeq;
  const alkalinity = alkalinityMgPerL / calciumCarbonateMgPerMeq / 1000;
  const taken = alkalinity - alkalinityLeft(carbonOfTapWater(alkalinity), 10 ** -pH);
  return fromMalts + waterL * (fromHardness - 1000 * taken);
}

/**
 * pH of a mash at room temperature: the one at which as many hydrogen ions are given off as are taken (A. J. deLange in
 * J. Palmer and C. Kaminski, Water, 2013). A measured mash is mostly within 0.1 of it.
 *
 * @param amount mL of an acid, g of a base
 * @throws BrewingError "impossible" without mashed malt; "uncovered" below 4.3 and above 6.8
 */
export function phOfMash(mash: Mash, corrector: Corrector, amount: number, strengthPercent?: number): number {
  requireMalt(mash);
  const moles = amount * millimoles(corrector, strengthPercent);
  const over = (pH: number): number => hydrogenOverMeq(mash, pH) + moles * hydrogenPerMole(corrector, pH);
  const side = over(coveredPh.from) > 0 ? "below 4.3" : over(coveredPh.to) < 0 ? "above 6.8" : undefined;
  if (side !== undefined)
    throw new BrewingError(
      "uncovered",
      `malts and water give a pH ${side}, where the malts' figures end; check amounts, alkalinity and units`,
    );
  return bisect(over, coveredPh.from, coveredPh.to);
}

/**
 * Acid, mL, or base, g, that brings a mash to a pH.
 *
 * @throws BrewingError "impossible" without mashed malt, or where it would take the opposite
 */
export function mashCorrection(mash: Mash, targetPh: number, corrector: Corrector, strengthPercent?: number): number {
  requireMalt(mash);
  const amount = -hydrogenOverMeq(mash, targetPh) / hydrogenPerMole(corrector, targetPh) / millimoles(corrector, strengthPercent);
  if (amount >= 0) return amount;
  throw new BrewingError(
    "impossible",
    isAcid(corrector)
      ? "target is above the pH of the mash without any acid: it needs none; for a higher pH take baking soda"
      : "target is below the pH of the mash without any base: it needs none; for a lower pH take lactic acid",
  );
}

function requireMalt({ malts }: Mash): void {
  if (malts.length === 0) throw new BrewingError("impossible", "malts hold nothing that is mashed");
}
