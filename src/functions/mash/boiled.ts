import { decoctionVolume } from "../../core/mash/decoction";
import { describeFunction } from "../describe";
import { optional, temperature, units, volume } from "../vocabulary";
import { mashTemperature } from "../water/mash";

export const mashBoiled = describeFunction({
  id: "MASH.BOILED",
  summary: "How much of a mash to draw and boil, so that it lifts the whole to the next temperature (decoction).",
  parameters: {
    volume: volume("The whole mash, as it stands in the tun.", { typical: 20 }),
    from: mashTemperature("Temperature of the mash now.", 55),
    target: mashTemperature("Temperature that it is to have.", 65),
    boilsAt: optional(temperature("Temperature at which it boils, see GYLE.WATER.BOILS.", { atLeast: 86, atMost: 102 }, 100), 100),
    units,
  },
  result: { kind: "number", quantity: "volume", doc: "Mash to draw. A thick one holds less heat: draw up to a fifth more." },
  equation: "draw = volume × (target − from) / (boils at − from)",
  sources: [
    { cite: "heat balance", where: "what the boiled part gives off, the rest takes up" },
    { cite: "L. Narziss, Abriss der Bierbrauerei", where: "the same balance for decoctions; from memory" },
  ],
  examples: [
    { arguments: [20, 50, 65], value: 6, tolerance: 1e-9, from: "worked by hand: 20 × 15 / 50" },
    { arguments: [5, 131, 149, 212, "us"], value: 1.111, tolerance: 0.001, from: "worked by hand: 5 × 18 / 81" },
  ],
  cautions: [
    "Boiling mash spits and scalds: stir all the time, return it slowly while stirring, and lift no full pot.",
    "The rest warms less in a cold tun: keep some of the boiled mash back, and return it by the thermometer.",
  ],
  compute: ({ volume, from, target, boilsAt }) => decoctionVolume(volume, from, target, boilsAt),
});
