import { headspaceLimits, usualHeadspacePercent } from "../../core/pack/closed-bottle";
import { number, optional } from "../vocabulary";

/** Where bottles and kegs are filled and stand: a gauge reads against the air of the place. */
export const altitude = optional(
  number("altitude", {
    doc: "Height above the sea where it is filled and stands; sea level when left out. Thinner air lets more gas go, and a gauge reads more.",
    limits: { atLeast: -500, atMost: 5000 },
    typical: 300,
    blank: "zero",
  }),
  0,
);

export const headspace = optional(
  number("percent", {
    doc: "Share of a bottle left free under the cap when filled, whose air is sealed in; 5 when left out. Not for a keg.",
    limits: headspaceLimits,
    typical: usualHeadspacePercent,
  }),
  usualHeadspacePercent,
);
