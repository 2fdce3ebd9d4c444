import { describeFields } from "../../describe/field";
import { volumes } from "../../describe/usual-limits";

/** A small fermentation before the large one, to grow the yeast that is at hand. */
export const starterFields = describeFields({
  packs: {
    kind: "number",
    since: 4,
    cell: "starter_packs",
    label: "Packs into the starter",
    format: "one",
    limits: [0, 1e4],
    blank: true,
    usual: 1,
  },
  gravity: {
    kind: "number",
    since: 4,
    cell: "starter_gravity",
    label: "Gravity of its wort",
    called: "gravity of the starter",
    format: "gravity",
    limits: [1.005, 1.05],
    held: true,
    usual: 1.036,
    note: "About 100 g of dry malt extract in a litre (0.8 lb in a US gallon). Stronger wort is hard on the yeast.",
  },
  culture: {
    kind: "choice",
    since: 4,
    cell: "starter_culture",
    label: "It is",
    called: "still or stirred",
    choices: ["still", "stirred"],
    note: "Stirred all the time, on a plate with a magnet, it grows about twice as many new cells.",
  },
  extractName: {
    kind: "text",
    since: 4,
    cell: "starter_extract_name",
    label: "Extract for it",
    longest: 120,
    usual: "Dry malt extract",
  },
  vessel: {
    kind: "number",
    since: 4,
    cell: "starter_vessel",
    label: "Its vessel holds",
    measure: "volume",
    format: "two",
    limits: volumes,
    blank: true,
  },
  madeOn: { kind: "moment", since: 4, cell: "starter_made_on", label: "Made on", role: "measured", format: "date", blank: true },
});
