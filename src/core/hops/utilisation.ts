import { freshHops, heated, relativeIsomerisation } from "./isomerisation";

/** The curves on offer for the share of alpha acid that ends up as bitterness. */
export const utilisationModels = ["tinseth", "rager", "kinetic"] as const;
export type UtilisationModel = (typeof utilisationModels)[number];

/** Numbers of the two models below. */
export const tinsethTerms = { factor: 1.65, base: 0.000125, perMinute: 0.04, divisor: 4.15 } as const;
export const ragerTerms = { middle: 18.11, reach: 13.86, minutes: 31.32, spread: 18.27, from: 1.05, over: 0.2 } as const;

/**
 * Tinseth's utilisation, a fraction (G. Tinseth, 1995; also J. J. Palmer, How to Brew, Table 7): a gravity factor
 * 1.65 × 0.000125^(SG - 1) times a time factor that climbs towards 1 / 4.15. Measured with whole hops.
 *
 * @param minutes time in the boil, 0 or more; at 0 the answer is 0
 * @param gravity average gravity of the boiling wort, 1.0 to 1.2
 */
function tinseth(minutes: number, gravity: number): number {
  return (
    (tinsethTerms.factor * tinsethTerms.base ** (gravity - 1) * (1 - Math.exp(-tinsethTerms.perMinute * minutes))) / tinsethTerms.divisor
  );
}

/**
 * Rager's utilisation, a fraction (J. Rager, Zymurgy, special issue 1990): the smooth curve through his table of
 * five-minute steps (the curve from memory, within 1 point of 100 of the table), less for wort above 1.050.
 * Hops that go in at 0 minutes still count 5 %, as in the first step of the table.
 */
function rager(minutes: number, gravity: number): number {
  const tabled = (ragerTerms.middle + ragerTerms.reach * Math.tanh((minutes - ragerTerms.minutes) / ragerTerms.spread)) / 100;
  return tabled / (1 + Math.max(0, (gravity - ragerTerms.from) / ragerTerms.over));
}

/**
 * Share of the alpha acid found again as bitterness, from the share that has become iso-alpha acid by the kinetics of
 * Malowicki and Shellhammer. Those were measured in a buffer; of a kettle's iso-alpha acid a good half is lost with
 * hops, trub and yeast, more in strong wort. Our own engineering combination, not published: one factor makes an hour
 * at 100 °C equal Tinseth's (0.485 at SG 1.050), and with it comes his gravity factor.
 */
export function utilisationOfIso(isoShare: number, gravity: number): number {
  return (isoShare * tinseth(60, gravity)) / heated(freshHops, 60, 100).iso;
}

/**
 * Share of the alpha acid that is found again as bitterness in the beer, 0 to about 0.4. Below 100 °C the minutes of
 * Tinseth and Rager count by the speed of isomerisation (see `relativeIsomerisation`), our own step.
 */
export function hopUtilisation(minutes: number, gravity: number, model: UtilisationModel, boilsAtC = 100): number {
  if (model === "kinetic") return utilisationOfIso(heated(freshHops, minutes, boilsAtC).iso, gravity);
  const minutesAt100C = minutes * relativeIsomerisation(boilsAtC);
  return model === "rager" ? rager(minutesAt100C, gravity) : tinseth(minutesAt100C, gravity);
}
