import type { Source } from "../describe";
import { mass, temperature, volume } from "../vocabulary";

/** What STRIKE and STEP share. */
export const mashParameters = {
  grainMass: mass("Grain in the mash.", { typical: 5 }),
  waterVolume: volume("Water in the mash, cold volume.", { typical: 15 }),
};

export const mashTemperature = (doc: string, typical: number) => temperature(doc, { atLeast: 20, atMost: 85 }, typical);

export const mashSources: readonly Source[] = [
  { cite: "Pauls and Whites, Brewing Room Book, 1984/85", where: "specific heat of malt by moisture: 0.40 at 3 to 4 %" },
  { cite: "J. J. Palmer, How to Brew, 1st ed., ch. 16", where: "the same heat balance as a rule, from memory" },
];
