import { co2, optional } from "../vocabulary";

/** Beer from the bottle holds the alcohol of its priming, too. */
export const primed = optional(
  co2("Gas that priming sugar made in the bottle, in volumes: the carbonation less GYLE.PACK.RESIDUAL. Nothing when left out.", {
    limits: { atLeast: 0, atMost: 10 },
    blank: "zero",
    typical: 1.6,
  }),
  0,
);
