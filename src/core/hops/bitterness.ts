import { afterBoil, type AfterBoil } from "./after-boil";
import { formFactors, type HopForm } from "./form";
import { freshHops, heated } from "./isomerisation";
import type { WhenAdded } from "./places";
import { hopUtilisation, utilisationOfIso, type UtilisationModel } from "./utilisation";

export interface HopAddition {
  readonly massG: number;
  /** Alpha acid, % of the mass. */
  readonly alphaPercent: number;
  /** Time in the boil, or a place outside of it. */
  readonly added: WhenAdded;
  /** Whole when left out. */
  readonly form?: HopForm;
}

export interface Boil {
  /** Finished wort that the bitterness is spread over, L. */
  readonly volumeL: number;
  /** Average specific gravity of the wort while it boils. */
  readonly gravity: number;
  readonly model: UtilisationModel;
  /** Temperature at which it boils, 80 to 102 °C. */
  readonly boilsAtC: number;
  /** Length of the boil: how long first-wort hops boil. */
  readonly minutes: number;
  readonly after: Pick<AfterBoil, "stand" | "chilling">;
}

/** Alpha acid put into each litre of the finished wort, mg/L; mass 0 or more, alpha acid 0 to 30 %, volume above 0. */
export const alphaMgPerL = (massG: number, alphaPercent: number, volumeL: number): number => (massG * 1000 * alphaPercent) / 100 / volumeL;

/**
 * Bitterness that one hop addition gives, IBU: milligrams of iso-alpha acid in a litre of beer. Alpha acid times its
 * utilisation in the boil, whose sources stand at `hopUtilisation`, and what the hops gain by the kinetics of Malowicki
 * and Shellhammer while the wort stands and chills. First-wort hops count as boiled the whole boil; dry hops add nothing
 * here: what they do to bitterness is not isomerisation.
 */
export function bitternessIbu({ massG, alphaPercent, added, form = "whole" }: HopAddition, boil: Boil): number {
  if (added === "dry") return 0;
  return (
    formFactors[form] *
    alphaMgPerL(massG, alphaPercent, boil.volumeL) *
    (added === "stand" ? gainedAfter(0, "stand", boil) : utilisationOf(added === "first wort" ? boil.minutes : added, boil))
  );
}

const utilisationOf = (minutes: number, boil: Boil): number =>
  hopUtilisation(minutes, boil.gravity, boil.model, boil.boilsAtC) + gainedAfter(minutes, "by flame-out", boil);

/** What comes on top after flame-out; hops that boiled for hours lose a little instead, which is left out. */
function gainedAfter(boiledMinutes: number, added: "by flame-out" | "stand", { boilsAtC, gravity, after }: Boil): number {
  const before = heated(freshHops, boiledMinutes, boilsAtC);
  return Math.max(0, utilisationOfIso(afterBoil(before, { boilsAtC, ...after }, added).iso - before.iso, gravity));
}
