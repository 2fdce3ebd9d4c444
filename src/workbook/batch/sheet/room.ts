import { boilingOverCold, grainLPerKg, mashingOverCold } from "../../../core/water/room";
import { quantity, type UnitSystem } from "../../../functions/quantities";

/**
 * What stands in the vessels at their fullest, in the sheet's units: the one place where the room is calculated. The printed check takes the formulas,
 * what has no sheet the numbers.
 */
export interface Standing {
  readonly beforeBoil: number;
  readonly collect: number;
  /** Blank or 0 where nothing is mashed. */
  readonly mashWater: number;
  readonly grain: number;
}

/** Room for a unit of grain, in the sheet's units, with as many digits as it has. */
const grainRoom = (units: UnitSystem): number => Number(quantity("absorption").fromCore(grainLPerKg, units).toFixed(4));

/** Wort as it comes to the boil. */
export const boilingRoom = ({ beforeBoil }: Standing): number => beforeBoil * boilingOverCold;
export const boilingRoomFormula = `water_before_boil*${boilingOverCold}`;

/** Grain and the water it is mashed with, stirred together. */
export const mashRoom = ({ mashWater, grain }: Standing, units: UnitSystem): number =>
  mashWater > 0 ? mashWater * mashingOverCold + grain * grainRoom(units) : 0;
/** @param water name of what stands in the mash: more than it was begun with, where boiling water has lifted it */
export const mashRoomFormula = (units: UnitSystem, water = "mash_water"): string =>
  `${water}*${mashingOverCold}+grain_mass*${grainRoom(units)}`;

/** The whole water with the bag of grain to steep in it. */
export const steepRoom = ({ collect, grain }: Standing, units: UnitSystem): number => collect * mashingOverCold + grain * grainRoom(units);
export const steepRoomFormula = (units: UnitSystem): string => `water_collect*${mashingOverCold}+grain_mass*${grainRoom(units)}`;

/** Water for the mash while it is heated, before it goes into a tun of its own. */
export const heatingRoom = ({ mashWater }: Standing): number => mashWater * mashingOverCold;
export const heatingRoomFormula = `mash_water*${mashingOverCold}`;
