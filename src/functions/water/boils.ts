import { waterBoilsAtC } from "../../core/water/boiling";
import { describeFunction } from "../describe";
import { number, units } from "../vocabulary";

export const waterBoils = describeFunction({
  id: "WATER.BOILS",
  summary: "Temperature at which water boils where you brew.",
  parameters: {
    altitude: number("altitude", {
      doc: "Height above the sea; an empty cell counts as sea level.",
      limits: { atLeast: -500, atMost: 5000 },
      typical: 300,
      blank: "zero",
    }),
    units,
  },
  result: {
    kind: "number",
    quantity: "temperature",
    doc: "Boiling temperature of water in average weather; highs and lows move it by up to 0.5 °C.",
  },
  equation: "p = 101325 (1 − 0.0065 h / 288.15)^5.25588 Pa, h in m; the temperature at which water has that vapour pressure",
  sources: [
    {
      cite: "ISO 2533:1975, Standard atmosphere",
      where: "pressure against altitude; that weather moves the answer by up to 0.5 °C is from memory",
    },
    { cite: "IAPWS R7-97(2012), Industrial Formulation 1997", where: "equation 31, saturation temperature; Tables 34 and 36" },
  ],
  examples: [
    { arguments: [5000, "us"], value: 203, tolerance: 0.5, from: "USDA, High Altitude Cooking and Food Safety: 203 °F at 5,000 ft" },
    { arguments: [110.88], value: 99.606, tolerance: 0.001, from: "IAPWS R7-97(2012), Table 36: 372.755919 K at 0.1 MPa" },
    { arguments: [0], value: 99.974, tolerance: 0.001, from: "computed with the python library iapws" },
  ],
  cautions: ["Wort boils 0.1 to 0.4 °C higher than water. Boiling liquid and its steam scald: keep lids, faces and children away."],
  compute: ({ altitude }) => waterBoilsAtC(altitude),
});
