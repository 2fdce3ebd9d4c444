import { platoFromGravity } from "../../core/wort/plato";
import { describeFunction } from "../describe";
import { gravity } from "../vocabulary";
import { coveredGravity, sugarTable } from "./sugar-tables";

export const wortPlato = describeFunction({
  id: "WORT.PLATO",
  summary: "Degrees Plato from specific gravity: the grams of sugar in 100 g of wort.",
  parameters: {
    gravity: gravity("Specific gravity of the wort or beer.", { covered: coveredGravity }),
  },
  result: { kind: "number", quantity: "plato", doc: "Extract, °P; below 0 for beer lighter than water." },
  equation: "P = 258.60 x − 226.12 x² + 175.45 x³ with x = SG − 1",
  sources: [sugarTable],
  examples: [
    { arguments: [1.04003], value: 10, tolerance: 0.006, from: "NBS Circular 440, Table 114, 10 °Bx" },
    { arguments: [1.06111], value: 15, tolerance: 0.006, from: "NBS Circular 440, Table 114, 15 °Bx" },
  ],
  cautions: ["In finished beer this is the apparent extract; alcohol hides part of what is there: see GYLE.BEER.EXTRACT."],
  compute: ({ gravity: specificGravity }) => platoFromGravity(specificGravity),
});
