import type { UnitSystem } from "../../../../functions/quantities";
import type { Method } from "../../describe/field";
import type { BlockKey } from "../../fields/blocks";

/** What a block's sheet is of. */
export interface Chosen {
  readonly units: UnitSystem;
  readonly method: Method;
  /** All that it has. */
  readonly blocks: readonly BlockKey[];
}
