import { expectedFinalGravity } from "../../core/yeast/attenuation";
import { describeFunction } from "../describe";
import { percentHint } from "../share-of-one";
import { percent } from "../vocabulary";
import { originalGravity } from "./wort";

export const yeastFinish = describeFunction({
  id: "YEAST.FINISH",
  summary: "Final gravity to expect from the attenuation of a yeast.",
  parameters: {
    originalGravity,
    attenuation: percent("Apparent attenuation, %: the maker's figure is usually 70 to 80.", {
      limits: { above: 1, atMost: 110 },
      typical: 75,
      hint: percentHint,
    }),
  },
  result: { kind: "number", quantity: "gravity", doc: "Specific gravity 20 °C/20 °C at the end of fermentation." },
  equation: "AE = OE × (1 − attenuation); FG is the gravity that shows AE",
  sources: [
    { cite: "J. De Clerck, A Textbook of Brewing, 1958, vol. 2", where: "apparent attenuation goes by the extract; from memory" },
    { cite: "NBS Circular 440, 1942, Table 114", where: "gravity and extract" },
  ],
  examples: [
    { arguments: [1.04, 75], value: 1.01, tolerance: 0.0005, from: "common practice: 75 % of 40 points go, 10 stay" },
    { arguments: [1.05, 75], value: 1.0121, tolerance: 0.00005, from: "worked by hand: 12.386 °P × 0.25 = 3.096 °P" },
  ],
  cautions: [
    "A forecast, no licence to bottle: mash, malt and yeast decide. Bottle when the gravity stands still (GYLE.LOG.STEADY).",
    "Taking the share off the points instead ends higher, by less than 0.001 up to 1.060 and about 0.002 at 1.100.",
  ],
  compute: ({ originalGravity, attenuation }) => expectedFinalGravity(originalGravity, attenuation),
});
