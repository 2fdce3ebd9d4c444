import { heatKjPerLitreKelvin } from "../../../../core/heat/water-heat";
import { num, product } from "./formula-parts";
import type { PlainArguments } from "./plain-arguments";
import type { PlainForm, ValueOnly } from "./plain-form";

/** Litres of wort that take as much heat as the cooling water really carries away, a minute. */
const cooling = (x: PlainArguments): string =>
  `(${x.core("flow")}*(1-EXP(-${x.core("coil")}/(${x.core("flow")}/60*${num(heatKjPerLitreKelvin)}))))`;

export const heatForms = {
  "HEAT.WARM": {
    holds: (x) => [`${x.core("to")}>=${x.core("from")}`],
    sum: (x) =>
      `${x.core("volume")}*${num(heatKjPerLitreKelvin)}*(${x.core("to")}-${x.core("from")})/(${x.core("power")}*${x.core("efficiency")}/100)/60`,
  },
  "HEAT.CHILL": {
    holds: (x) => [`${x.core("to")}<=${x.core("from")}`, `${x.core("to")}>${x.core("tapTemperature")}`],
    sum: (x) => {
      const [from, to, tap] = [x.core("from"), x.core("to"), x.core("tapTemperature")];
      return `${x.core("volume")}/${cooling(x)}*LN((${from}-${tap})/(${to}-${tap}))`;
    },
  },
  "HEAT.COIL": { value: "it fits a line through a log of readings" },
} satisfies Record<string, PlainForm | ValueOnly>;

export const cleanForms = {
  "CLEAN.DOSE": { sum: (x) => product(x.core("volume"), x.core("perVolume")) },
} satisfies Record<string, PlainForm>;
