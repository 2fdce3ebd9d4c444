import { gravityFromRefractometerReadings } from "../../core/beer/refractometer";
import { describeFunction } from "../describe";
import { brixReading, wortCorrection } from "../wort/refractometer";

export const beerRefractometer = describeFunction({
  id: "BEER.REFRACTOMETER",
  summary: "Gravity of fermenting beer from two refractometer readings, before the yeast went in and now.",
  parameters: {
    originalBrix: brixReading("Reading of the wort before the yeast went in, °Brix.", 12.5),
    brix: brixReading("Reading now, °Brix.", 6.4),
    wortCorrection,
  },
  result: { kind: "number", quantity: "gravity", doc: "Specific gravity 20 °C/20 °C of the beer, to about ±0.002." },
  equation: "SG = 1 − 0.00085683 original_brix / wort_correction + 0.0034941 brix / wort_correction",
  sources: [{ cite: "S. Terrill, refractometer final-gravity study, 2011", where: "linear curve, from 61 % apparent attenuation on" }],
  examples: [
    { arguments: [11, 5.6, 1], value: 1.01014, tolerance: 1e-5, from: "worked by hand: 1 − 0.009425 + 0.019567" },
    {
      arguments: [12.48, 6.448],
      value: 1.01138,
      tolerance: 1e-5,
      from: "worked by hand: 12 and 6.2 after the correction: 1 − 0.010282 + 0.021663",
    },
  ],
  modelSpread: { plusOrMinus: 0.002, from: "S. Terrill, 2011" },
  cautions: ["Never bottle on this figure alone: it can be wrong by 0.003, enough to burst bottles. Confirm the end with a hydrometer."],
  compute: (values) => gravityFromRefractometerReadings(values.originalBrix, values.brix, values.wortCorrection),
});
