import { describeFields } from "../../describe/field";
import { degrees, gravities, volumes } from "../../describe/usual-limits";

const kettleVolume = {
  kind: "number",
  since: 4,
  role: "measured",
  measure: "volume",
  format: "two",
  limits: volumes,
  blank: true,
} as const;
const warmth = {
  kind: "number",
  since: 4,
  role: "measured",
  measure: "temperature",
  format: "whole",
  limits: degrees,
  blank: true,
} as const;

/** What a dip stick and a hydrometer say before and after the boil: what the grain gave, while it can still be corrected. */
export const beforeBoilFields = describeFields({
  volume: {
    ...kettleVolume,
    cell: "before_volume",
    label: "In the kettle before the boil",
    called: "volume before the boil",
    note: "With all that dissolves in it. Hot or cold: the temperature below says which.",
  },
  temperature: {
    ...warmth,
    cell: "before_temperature",
    label: "at a temperature of",
    called: "temperature of the wort before the boil",
    plausible: { from: 5, to: 101, words: "Wort before the boil at" },
    note: "Of the wort when its volume was read: hot wort takes up to 4 % more room. Leave empty where it was cold.",
  },
  reading: {
    kind: "number",
    since: 4,
    cell: "before_reading",
    label: "Reading before the boil",
    role: "measured",
    format: "gravity",
    limits: gravities,
    blank: true,
    note: "From a well-stirred sample that has cooled: a hot one cracks the glass and misleads.",
  },
  scale: { kind: "choice", since: 4, cell: "before_scale", label: "Its scale", called: "scale before the boil", choices: ["SG", "P"] },
  sampleTemperature: {
    ...warmth,
    cell: "before_sample",
    label: "Temperature of the sample",
    called: "temperature of the sample before the boil",
    plausible: { from: 0, to: 70, words: "Sample at" },
  },
  afterVolume: { ...kettleVolume, cell: "after_volume", label: "In the kettle after the boil", called: "volume after the boil" },
  afterTemperature: {
    ...warmth,
    cell: "after_temperature",
    label: "at this temperature",
    called: "temperature of the wort after the boil",
    plausible: { from: 5, to: 101, words: "Wort after the boil at" },
  },
  tunLeft: {
    ...kettleVolume,
    cell: "tun_left",
    label: "Left below the false bottom",
    called: "volume left in the mash tun",
    note: "What runs out when the drained tun is tipped, cold: its dead space. The kit learns it apart from what the grain keeps.",
  },
});
