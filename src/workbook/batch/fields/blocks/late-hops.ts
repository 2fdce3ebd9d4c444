import { utilisationModels } from "../../../../core/hops/utilisation";
import { describeFields } from "../../describe/field";

/** Days that hops lie in the beer, or after which they go in. */
const days = { kind: "number", since: 4, format: "whole", unit: "days", limits: [0, 365], blank: true } as const;

/** Which model the bitterness goes by, and when the dry hops go in and out. The stand has its cells on every sheet. */
export const lateHopsFields = describeFields({
  model: {
    kind: "choice",
    since: 4,
    cell: "bitterness_model",
    label: "Bitterness model",
    choices: utilisationModels,
    note: "Tinseth's is for whole hops in a boil at home, Rager's gives more for short boils, the kinetic one follows the heat, in stand and chilling as well. They differ by a fifth and more; stay with one and compare your own beers by it.",
  },
  dryAfter: { ...days, cell: "dry_after", label: "Dry hops go in", unit: "days after pitching" },
  dryFor: {
    ...days,
    cell: "dry_for",
    label: "and stay for",
    called: "days that dry hops stay",
    note: "Two or three days give nearly all of the scent; longer brings grassy tastes (common practice).",
  },
});
