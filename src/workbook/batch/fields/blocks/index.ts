import { describeFields } from "../../describe/field";
import { beforeBoilFields } from "./before-boil";
import { waterBlockFields } from "./water";

/**
 * What a sheet may have beyond a beginner's, chosen with a new batch or added later, in the order in which a new sheet has it. A block is
 * there where the sheet has the name in `area`; its rows stand below the checks (`sheet/blocks`), so that nothing moves when one comes.
 */
export const blockFields = describeFields({
  waterTreatment: { kind: "group", label: "Water treatment", since: 4, optional: true, area: "water_treatment", fields: waterBlockFields },
  beforeBoil: {
    kind: "group",
    label: "Before the boil",
    since: 4,
    optional: true,
    area: "before_boil",
    fields: beforeBoilFields,
  },
});

export type BlockKey = keyof typeof blockFields;
export const blockKeys = Object.keys(blockFields) as BlockKey[];

/** Name of the line of checks that closes a block. */
export const checkName = (key: BlockKey) => `${blockFields[key].area}_check` as const;

/** Names of what calculates in a block, beside those of its fields. */
export const blockResults = [
  "source_water",
  "target_water",
  "diluted_water",
  "treated_ions",
  "treated_water",
  "treated_volume",
  "salt_bill",
  "alkalinity_treated",
  "residual_alkalinity",
  "sulfate_to_chloride",
  "before_cold",
  "before_gravity",
  "before_planned",
  "before_efficiency",
  "og_forecast",
  "added_volume",
  "mash_kept",
  "absorption_seen",
  "after_cold",
  "boil_off_seen",
  "kettle_left",
] as const;
export type BlockResult = (typeof blockResults)[number] | ReturnType<typeof checkName>;
