import { gravityFromHydrometer } from "../../core/wort/hydrometer";
import { describeFunction } from "../describe";
import { choice, looksLikeThousands, number, optional, temperature, units } from "../vocabulary";

export const wortHydrometer = describeFunction({
  id: "WORT.HYDROMETER",
  summary: "True specific gravity from a hydrometer reading taken at any temperature.",
  parameters: {
    reading: number("number", {
      doc: "What the hydrometer shows: 1.048, or 12 with scale P.",
      limits: { atLeast: -5, atMost: 40 },
      typical: 1.05,
      hint: looksLikeThousands,
    }),
    sampleTemperature: temperature("Temperature of the sample as it was read.", { atLeast: 1, atMost: 70 }, 25),
    calibratedAt: optional(
      temperature("Temperature printed on the hydrometer; 20 °C (68 °F) when left out.", { atLeast: 10, atMost: 30 }, 20),
      20,
    ),
    scale: optional(choice("SG for specific gravity; P for °Plato, °Balling or °Brix.", ["SG", "P"]), "SG"),
    units,
  },
  result: { kind: "number", quantity: "gravity", doc: "Specific gravity 20 °C/20 °C, also when the hydrometer shows °P." },
  equation: "ρ(sample) = ρ(reading at calibration) × [1 − 25e−6 (t − t_cal)]; the sugar content with that density at t gives SG at 20 °C",
  sources: [
    {
      cite: "ICUMSA Specification SPS-4; Bettin, Emmerich, Spieweck and Toth, 1998",
      where: "density of sucrose solutions, 0 to 80 °C; title and range from memory",
    },
    {
      cite: "G. S. Kell, J. Chem. Eng. Data 20, 1975",
      where: "density of water, in the form for the temperature scale of 1990; those coefficients from memory",
    },
    { cite: "handbook value, from memory", where: "expansion of soda-lime glass, 25e−6 per K" },
  ],
  examples: [
    {
      arguments: [1.02, 95, 60, null, "us"],
      value: 1.025,
      tolerance: 0.00035,
      from: "leaflet packed with 60 °F hydrometers: add 5.0 points at 95 °F",
    },
    { arguments: [1.04, 30], value: 1.0427, tolerance: 0.0001, from: "computed from the equation" },
    {
      arguments: [10, 25, null, "P"],
      value: 1.04127,
      tolerance: 0.0001,
      from: "NBS table of Brix spindle corrections (+0.30 °Bx, from memory), then Table 114",
    },
  ],
  cautions: [
    "Let hot wort cool first: above about 40 °C a small error in temperature costs a point, and a hot sample can crack the glass and scald.",
    "A hydrometer marked for 60 °F or 15 °C reads a trifle higher than one for 20 °C in the same wort; the answer is for 20 °C.",
  ],
  compute: ({ reading, sampleTemperature, calibratedAt, scale }) => gravityFromHydrometer(reading, scale, sampleTemperature, calibratedAt),
});
