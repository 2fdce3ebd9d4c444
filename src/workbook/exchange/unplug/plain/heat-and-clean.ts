import { heatKjPerLitreKelvin } from "../../../../core/heat/water-heat";
import { evaporationKjPerKg } from "../../../../core/heat/boil-off";
import { waterKgPerL20C } from "../../../../core/wort/density";
import { num, product } from "./formula-parts";
import type { PlainArguments } from "./plain-arguments";
import type { PlainForm, ValueOnly } from "./plain-form";

/** Litres of wort that take as much heat as the cooling water really carries away, a minute. */
const cooling = (x: PlainArguments): string =>
  `(${x.core("flow")}*(1-EXP(-${x.core("coil")}/(${x.core("flow")}/60*${num(heatKjPerLitreKelvin)}))))`;

/** As `core/heat/counterflow.ts`. */
const counterflow: PlainForm = {
  holds: (x) => [`${x.core("tapTemperature")}<${x.core("from")}`],
  sum: (x) => {
    const [from, tap, wort, water] = [x.core("from"), x.core("tapTemperature"), x.core("wortFlow"), x.core("flow")];
    const units = `(${x.core("coil")}/(${wort}/60*${num(heatKjPerLitreKelvin)}))`;
    const ratio = `(${wort}/${water})`;
    // Of the two exponents the falling one, so that nothing overflows.
    const falling = `EXP(-${units}*ABS(1-${ratio}))`;
    const share = `IF(ABS(1-${ratio})<1E-9,${units}/(1+${units}),(1-${falling})/IF(${ratio}<1,1-${ratio}*${falling},${ratio}-${falling}))`;
    return `${from}-${share}*(${from}-${tap})`;
  },
};

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
  "HEAT.BOILOFF": { sum: (x) => `36*${x.core("power")}*${x.core("efficiency")}/${num(evaporationKjPerKg)}/${num(waterKgPerL20C)}` },
  "HEAT.COUNTERFLOW": counterflow,
  "HEAT.COIL": { value: "it fits a line through a log of readings" },
} satisfies Record<string, PlainForm | ValueOnly>;

export const cleanForms = {
  "CLEAN.DOSE": { sum: (x) => product(x.core("volume"), x.core("perVolume")) },
} satisfies Record<string, PlainForm>;
