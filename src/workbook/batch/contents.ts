import type { Blank } from "../grid/read/named-cells";
import type { ValuesOf } from "./describe/field";
import type { BatchFields } from "./fields";

/** A cell that may still be empty. */
export type Filled<T> = T | Blank;

export type { Method } from "./describe/field";
/** Where a hop goes in beside the boil: before it, into the hot wort after it, or into the fermenter. */
export { hopPlaces, type HopPlace } from "../../core/hops/places";

/** Everything that a brewer types into a batch sheet, as `fields/` describes it. A new batch has most of it still blank. */
export type BatchContents = ValuesOf<BatchFields>;

export type Kit = BatchContents["kit"];
export type MaltLine = BatchContents["malt"][number];
export type HopLine = BatchContents["hops"][number];
export type StepLine = NonNullable<BatchContents["steps"]>[number];
export type Scale = BatchContents["wort"]["scale"];
