import type { HopPlace } from "../../core/hops/places";
import type { UnitSystem } from "../../functions/quantities";
import type { CellContent } from "../grid/plan/sheet-plan";
import type { Blank } from "../grid/read/named-cells";

/** A cell that may still be empty. */
export type Filled<T> = T | Blank;

export type Handling = "mash" | "steep" | "extract" | "sugar";
export type Scale = "SG" | "P";
/** How the sugar comes about: bought as extract (with some grain steeped for taste), or mashed from malt. */
export type Method = "extract" | "all-grain";

export interface MaltLine {
  readonly ingredient: string;
  /** lb or kg. */
  readonly mass: number;
  /** Extract that the ingredient can give, % of its mass as bought. */
  readonly yieldPercent: number;
  readonly handling: Handling;
  /** °L, or EBC on a metric sheet. */
  readonly colour: number;
  readonly cost: Filled<number>;
  readonly remark?: string;
}

/** Where a hop goes in beside the boil: before it, into the hot wort after it, or into the fermenter. */
export { hopPlaces, type HopPlace } from "../../core/hops/places";

export interface HopLine {
  readonly hop: string;
  /** oz or g. */
  readonly mass: number;
  readonly alphaPercent: number;
  /** Minutes left in the boil when it goes in, or where else it goes in. */
  readonly minutes: number | HopPlace;
  readonly form: string;
  readonly cost: Filled<number>;
  readonly remark?: string;
}

/** One line of the brew day as a teacher edits it; `what` and `minutes` may be formulas over the sheet's own names. */
export interface StepLine {
  readonly what: CellContent;
  readonly part: "before" | "boil" | "after";
  /** How long it takes; in the boil: minutes left. */
  readonly minutes: CellContent;
  readonly caution: string;
  readonly why: string;
}

export interface Kit {
  readonly boilMinutes: number;
  readonly boilOff: number;
  readonly kettleLoss: number;
  readonly kettleSize: number;
  readonly altitude: number;
  readonly powerKw: number;
  readonly heatEfficiencyPercent: number;
  readonly tapTemperature: number;
  readonly tapFlow: number;
  readonly coilKwPerK: number;
  readonly sanitiserVolume: number;
  readonly soakTemperature: number;
  readonly soakMinutes: number;
  readonly grainEfficiencyPercent: number;
  /** Water to grain in the mash: L/kg or US gal/lb. */
  readonly mashThickness: number;
  readonly grainTemperature: number;
  readonly hydrometerCalibratedAt: number;
  readonly bottleVolume: number;
  readonly bottlingLoss: number;
  /** Water that is missing after the grain, for each unit of its mass: what went in less the wort that came out. */
  readonly absorption: number;
  /** Left behind below the false bottom of a mash tun. */
  readonly deadSpace: number;
  /** What a mash tun of its own holds; 0 = the mash stands in the kettle. */
  readonly tunSize: number;
  /** Sanitiser concentrate for each unit of water, by its label; 0 = not looked up yet. */
  readonly sanitiserDose: number;
  /** Air above the beer in a bottle, % of what the bottle holds. */
  readonly headspacePercent: number;
}

/** Hops left in the hot wort after the boil; blank where there is no such stand. */
export interface HopStand {
  readonly temperature: Filled<number>;
  readonly minutes: Filled<number>;
}

export interface Yeast {
  readonly name: string;
  readonly packsInHand: Filled<number>;
  /** Thousand million. */
  readonly cellsPerPack: Filled<number>;
  readonly viabilityPercent: Filled<number>;
  readonly pitchRate: Filled<number>;
  readonly attenuationPercent: Filled<number>;
  readonly pitchTemperature: Filled<number>;
  readonly fermentFrom: Filled<number>;
  readonly fermentTo: Filled<number>;
  readonly cost: Filled<number>;
}

export interface MeasuredWort {
  /** Water that really went in, cold; blank: what the sheet said. */
  readonly collected: Filled<number>;
  readonly reading: Filled<number>;
  readonly scale: Scale;
  readonly sampleTemperature: Filled<number>;
  readonly volume: Filled<number>;
}

export interface Reading {
  /** Excel day number with the time of day. */
  readonly when: number;
  readonly reading: number;
  readonly scale: Scale;
  readonly sampleTemperature: Filled<number>;
  readonly beerTemperature: Filled<number>;
}

export interface Packaging {
  readonly packagedOn: Filled<number>;
  readonly into: "bottles" | "keg";
  readonly co2Volumes: number;
  readonly warmestSinceFermentation: Filled<number>;
  readonly sugar: string;
  readonly bottleKind: string;
  readonly warmestStorage: number;
  readonly conditioningTemperature: number;
  readonly kegTemperature: number;
  readonly bottlesFilled: Filled<number>;
}

export interface TastingLine {
  readonly score: Filled<number>;
  readonly words: string;
}

export interface Tasting {
  readonly tastedOn: Filled<number>;
  readonly looks: TastingLine;
  readonly smells: TastingLine;
  readonly tastes: TastingLine;
  readonly feels: TastingLine;
  readonly again: TastingLine;
  readonly notes: string;
}

/** Everything that a brewer types into a batch sheet. A new batch has most of it still blank. */
export interface BatchContents {
  /** Tells this batch from every other, also in files that travel; a copied sheet keeps it. */
  readonly id: string;
  readonly sheetName: string;
  readonly batchName: string;
  readonly number: Filled<number>;
  /** Excel day number. */
  readonly brewedOn: number;
  /** Fraction of a day. */
  readonly startTime: number;
  readonly style: string;
  readonly method: Method;
  readonly units: UnitSystem;
  readonly volume: number;
  /** Water added in the fermenter; 0 = the whole volume is boiled. */
  readonly topUp: number;
  readonly salts: string;
  /** Name of the kit that it is planned on, as on the kit sheet; "" = the usual one. */
  readonly kitName: string;
  readonly kit: Kit;
  readonly malt: readonly MaltLine[];
  readonly hops: readonly HopLine[];
  readonly hopStand: HopStand;
  /** Day on which hops went into the fermenter. */
  readonly dryHoppedOn: Filled<number>;
  readonly yeast: Yeast;
  /** Steps, whys and cautions in words of one's own; left out: ours for the method. */
  readonly steps?: readonly StepLine[];
  /** When each line of the brew day really happened, from the first on. */
  readonly happened: readonly Filled<number>[];
  readonly wort: MeasuredWort;
  readonly readings: readonly Reading[];
  readonly packaging: Packaging;
  readonly tasting: Tasting;
}
