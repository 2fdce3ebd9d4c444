import type { BatchContents, Filled, HopLine, Kit, MaltLine } from "../contents";
import type { UnitSystem } from "../../../functions/quantities";
import { plannedFigures, type PlannedFigures } from "../figures/planned-figures";
import { growFields, roundFields } from "../derived/convert-fields";
import { withoutMeasured } from "../derived/parts";
import { toStep } from "../describe/measures";
import { batchFields } from "../fields";
import { convertUnits } from "./convert-units";
import { maltFactors } from "./held-malt";
import { roundedHop, roundedMalt } from "./weighable";

export interface ScaleTarget {
  /** Into the fermenter, in `units`. */
  readonly volume: number;
  readonly units: UnitSystem;
  /** Another kit, in `units`; left out: the batch's own. */
  readonly kit?: { readonly name: string; readonly kit: Kit };
}

/**
 * The plan of a batch for another volume, kit or unit system, with original gravity, colour and bitterness held: malt
 * goes by the volume that shares the extract, each hop by how much the new kettle takes up. Masses are
 * rounded to what a scale can weigh, so a little is left over: see `scalingRemarks`. What was measured, tasted and noted
 * belongs to the beer that was brewed and does not come along.
 */
export function scaleBatch(batch: BatchContents, { volume, units, kit }: ScaleTarget): BatchContents {
  const from = convertUnits(planOnly(batch), units);
  const before = plannedFigures(from);
  const onKit: BatchContents = {
    ...growFields(batchFields, from, volume / from.volume),
    volume,
    topUp: (from.topUp * volume) / from.volume,
    ...(kit ? { kitName: kit.name, kit: movedKit(from, kit.kit) } : {}),
  };
  const frame = roundedFrame(onKit, units);
  const factor = (plannedFigures(frame).gravityVolume ?? volume) / (before.gravityVolume ?? from.volume);
  const factors = maltFactors(from, factor, frame.kit.grainEfficiencyPercent);
  const withMalt = { ...frame, malt: from.malt.map((line, index) => scaledMalt(line, factors[index] ?? factor, units)) };
  // The hops go by the kettle that this malt makes, as it will be weighed.
  return { ...withMalt, hops: heldHops(from.hops, withMalt, before, factor) };
}

/** What is planned of a batch, without what has been measured, tasted and noted. */
export const planOnly = (batch: BatchContents): BatchContents => withoutMeasured(batchFields, batch, batch);

/** The new kit's vessels, losses and heat; how long and how warm to mash, steep and boil belongs to the recipe, and so does what steeping wins. */
function movedKit({ kit: recipe, method }: BatchContents, kit: Kit): Kit {
  const { boilMinutes, soakTemperature, soakMinutes, mashThickness, grainEfficiencyPercent } = recipe;
  return { ...kit, boilMinutes, soakTemperature, soakMinutes, mashThickness, ...(method === "extract" && { grainEfficiencyPercent }) };
}

/** At flame-out, in the stand and dry, hops are there for their scent. */
const forScent = ({ minutes }: HopLine): boolean => minutes === 0 || minutes === "stand" || minutes === "dry";

/**
 * Same taste in every litre: what is there for its scent goes by the volume, all else by the bitterness. A bigger batch
 * chills more slowly, so that the scent hops turn a little more bitter: the others make up for it.
 */
function heldHops(hops: readonly HopLine[], target: BatchContents, before: PlannedFigures, factor: number): HopLine[] {
  const scented = hops.map((line) => (forScent(line) ? { ...line, mass: line.mass * factor } : line));
  const same = plannedFigures({ ...target, hops: scented });
  const sumOf = (ibu: readonly (number | undefined)[], scent: boolean): number =>
    hops.reduce((sum, line, index) => sum + (forScent(line) === scent ? (ibu[index] ?? 0) : 0), 0);
  const [boiled, drift] = [sumOf(before.ibuOfEach, false), sumOf(before.ibuOfEach, true) - sumOf(same.ibuOfEach, true)];
  const share = boiled > 0 ? Math.max(0, 1 + drift / boiled) : 1;
  return hops.map((line, index) => {
    const [wanted = 0, got = 0] = [before.ibuOfEach[index], same.ibuOfEach[index]];
    const mass = roundedHop(line.mass * (!forScent(line) && wanted > 0 && got > 0 ? (share * wanted) / got : factor), target.units);
    return { ...line, mass, cost: scaledCost(line.cost, line.mass, mass) };
  });
}

function scaledMalt(line: MaltLine, factor: number, units: UnitSystem): MaltLine {
  const mass = roundedMalt(line.mass * factor, units);
  return { ...line, mass, colour: toStep(line.colour, 0.1), cost: scaledCost(line.cost, line.mass, mass) };
}

const scaledCost = (cost: Filled<number>, before: number, after: number): Filled<number> =>
  cost === "" || before === 0 ? cost : toStep((cost * after) / before, 0.01);

/** Everything but malt and hops, rounded to what can be measured; the volume stays as it is wished. */
const roundedFrame = (batch: BatchContents, units: UnitSystem): BatchContents => ({
  ...roundFields(batchFields, batch, units),
  volume: batch.volume,
});
