import type { TableParameter } from "../describe";
import { hopPlaces } from "../../core/hops/places";
import { choice, minutes, omissible, smallMass } from "../vocabulary";

const stepColumns = {
  step: { kind: "text", doc: "what to do" },
  part: choice("before, boil or after", ["before", "boil", "after"]),
  minutes: minutes("how long it takes; in the boil, how many minutes are left when it is done, at most those that the boil has"),
  caution: { kind: "text", doc: "what to beware of", optional: true },
} as const;

/** What there is to do, from the sheet: columns beyond the caution (the time it really happened, notes) are passed over. */
export const steps = {
  kind: "table",
  doc: "The steps of the day in order. part: before, boil or after. minutes: how long it takes; in the boil, how many are left. The caution may be left off; notes may stand beyond it.",
  columns: stepColumns,
  layouts: [
    ["step", "part", "minutes", "caution"],
    ["step", "part", "minutes"],
    ["step", "part", "minutes", "caution", null],
    ["step", "part", "minutes", "caution", null, null],
  ],
} as const satisfies TableParameter<typeof stepColumns>;

const hopColumns = {
  hop: { kind: "text", doc: "name", optional: true },
  mass: omissible(smallMass("how much")),
  minutes: { ...minutes("left in the boil when it goes in, or first wort, stand or dry"), words: hopPlaces },
} as const;

/** The hop bill of the sheet: the alpha acid in it is passed over. */
export const hops = {
  kind: "table",
  doc: "Hops; minutes is what is left of the boil when they go in, 0 at flame-out, or first wort, stand or dry. Left out, no hops are listed.",
  columns: hopColumns,
  layouts: [
    ["hop", "mass", null, "minutes"],
    ["hop", "mass", "minutes"],
  ],
  optional: true,
} as const satisfies TableParameter<typeof hopColumns>;
