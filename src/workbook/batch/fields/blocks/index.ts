import { describeFields, type Group, type Method } from "../../describe/field";
import { beforeBoilFields } from "./before-boil";
import { kegLineFields } from "./keg-line";
import { lateHopsFields } from "./late-hops";
import { mashFields } from "./mash";
import { partsFields } from "./parts";
import { starterFields } from "./starter";
import { waterBlockFields } from "./water";

/**
 * What a sheet may have beyond a beginner's, chosen with a new batch or added later, in the order in which a new sheet has it. A block is
 * there where the sheet has the name in `area`; its rows stand below the checks (`sheet/blocks`), so that nothing moves when one comes.
 */
export const blockFields = describeFields({
  waterTreatment: { kind: "group", label: "Water treatment", since: 4, optional: true, area: "water_treatment", fields: waterBlockFields },
  mashRunOff: {
    kind: "group",
    label: "Mash steps and run-off",
    since: 4,
    optional: true,
    method: "all-grain",
    area: "mash_and_run_off",
    fields: mashFields,
  },
  beforeBoil: {
    kind: "group",
    label: "Before the boil",
    since: 4,
    optional: true,
    area: "before_boil",
    fields: beforeBoilFields,
  },
  lateHops: { kind: "group", label: "Late and dry hops", since: 4, optional: true, area: "late_hops", fields: lateHopsFields },
  starter: { kind: "group", label: "Yeast starter", since: 4, optional: true, area: "yeast_starter", fields: starterFields },
  partsOfWort: {
    kind: "group",
    label: "Several packagings",
    since: 4,
    optional: true,
    area: "parts_of_wort",
    fields: partsFields,
  },
  kegLine: { kind: "group", label: "Keg and line", since: 4, optional: true, area: "keg_and_line", fields: kegLineFields },
});

export type BlockKey = keyof typeof blockFields;
export const blockKeys = Object.keys(blockFields) as BlockKey[];

/** Those that a batch which is brewed so may have. */
export const blocksFor = (method: Method): readonly BlockKey[] =>
  blockKeys.filter((key) => {
    const { method: only }: Group = blockFields[key];
    return only === undefined || only === method;
  });

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
  "salts_wanted",
  "report_verdict",
  "mash_ph",
  "mash_correction",
  "second_amount",
  "third_from",
  "third_amount",
  "fourth_from",
  "fourth_amount",
  "second_adds",
  "third_adds",
  "fourth_adds",
  "second_water",
  "third_water",
  "mash_full",
  "first_cold",
  "first_gravity",
  "later_cold",
  "later_gravity",
  "first_plato",
  "later_plato",
  "first_extract",
  "later_extract",
  "mash_extract",
  "runnings_planned",
  "runnings_volume",
  "runnings_gravity",
  "runnings_expected",
  "runnings_efficiency",
  "conversion_seen",
  "runnings_kept",
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
  "ibu_tinseth",
  "ibu_rager",
  "ibu_kinetic",
  "stand_mass",
  "stand_bitterness",
  "dry_mass",
  "dry_rate",
  "dry_effect",
  "dry_bitterness",
  "dry_in",
  "dry_out",
  "starter_cells",
  "starter_volume",
  "starter_extract",
  "starter_by",
  "wort_parts",
  "parts_into",
  "parts_carbonation",
  "parts_warmest_beer",
  "parts_place",
  "parts_vessel",
  "parts_bottle",
  "parts_sugar_kind",
  "parts_gravity",
  "parts_end",
  "part_one_verdict",
  "part_one_sugar",
  "part_one_pressure",
  "part_one_inside",
  "part_two_verdict",
  "part_two_sugar",
  "part_two_pressure",
  "part_two_inside",
  "part_three_verdict",
  "part_three_sugar",
  "part_three_pressure",
  "part_three_inside",
  "part_four_verdict",
  "part_four_sugar",
  "part_four_pressure",
  "part_four_inside",
  "parts_ready",
  "parts_beer",
  "parts_total",
  "parts_left",
  "parts_for_kegs",
  "parts_caps",
  "parts_bottles",
  "parts_bottled",
  "parts_kegged",
  "kegs_ready",
  "spund_planned",
  "spund_at",
  "line_length",
] as const;
export type BlockResult = (typeof blockResults)[number] | ReturnType<typeof checkName>;
