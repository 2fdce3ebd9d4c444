import type { VesselKind } from "../../core/pack/bottle-kinds";
import type { BottleCheck } from "../../core/pack/bottle-check";
import type { Context } from "../describe";
import { quantity, type QuantityName } from "../quantities";

/** How the sentence calls each kind of bottle. */
export const bottleWords: Readonly<Record<VesselKind, string>> = {
  ordinary: "an ordinary beer bottle",
  heavy: "a heavy refillable beer bottle",
  thick: "a thick-walled beer bottle",
  sparkling: "a sparkling-wine bottle",
  plastic: "a plastic soda bottle",
  keg: "a keg",
};

/** The one thing to do about bottles that hold too much, or may come to: nowhere does the project say another. */
export const filledAlready = "Bottles already filled: do not open or move them; keep people away and cool the room.";
export const waitForIt = "wait until two readings a day apart agree at the gravity expected";

/** What to make of a verdict on finished beer. */
export const bottleAdvice: Readonly<Record<BottleCheck["verdict"], string>> = {
  within: "Holds only for sound bottles of that kind, evenly primed.",
  close: "No margin for a slip: weigh the sugar exactly, store cooler, or take less sugar or stronger bottles.",
  over: `Do not bottle like this: take less sugar or stronger bottles, or store cooler. ${filledAlready}`,
};
export const kegAdvice: Readonly<Record<BottleCheck["verdict"], string>> = {
  within: "The pressure on the keg's own plate comes first.",
  close: "No margin for a slip: chill the beer or ask for less, and look at the keg's own plate.",
  over: "Do not set a keg like this: chill the beer, or ask for less.",
};

/** The same of beer that still ferments: there is one remedy. */
export const unfinishedBottles: Readonly<Record<BottleCheck["verdict"], string>> = {
  within: bottleAdvice.within,
  close: `Do not bottle yet: ${waitForIt}.`,
  over: `Do not bottle: ${waitForIt}. ${filledAlready}`,
};
export const unfinishedKeg: Readonly<Record<BottleCheck["verdict"], string>> = {
  within: kegAdvice.within,
  close: `Do not keg yet: ${waitForIt}.`,
  over: `Do not keg: ${waitForIt}. A keg already filled: keep it cold and let gas off.`,
};

/** Of gas, what a limit rests on. */
export const limitBasis = " (common practice, from memory)";

/** What the brewer knew of the beer's gravity: decides what is said about fermentation still to come. */
export type Counted = "counted" | "not counted" | "passed";

/** What a hydrometer may be wrong by, in points: a line, and a hair for the binary fractions. */
export const readingError = 1 + 1e-6;

/** Beer below the gravity expected shows that the expectation was wrong; where it ends nobody knows then. */
export const passedWords = " What fermentation may still add is not known: the beer is below the gravity expected. Bottle only when two readings a day apart agree.";
export const notCountedWords = " What fermentation may still add is not counted: give gravity and expected.";

/**
 * The verdict in a sentence or two. The first word is the verdict itself, so that a sheet can colour it.
 * Nowhere does it call a bottle safe: the limits are from memory, and glass has a history.
 */
export function checkWords(kind: VesselKind, temperatureC: number, check: BottleCheck, counted: Counted, { units, show }: Context): string {
  const digits: Partial<Record<QuantityName, number>> = { co2: 2, pressure: units === "us" ? 1 : 2, temperature: 1 };
  const say = (name: QuantityName, value: number): string => `${Number(show(name, value).toFixed(digits[name]))} ${name === "co2" ? "volumes" : quantity(name).unit[units]}`;
  const { verdict, volumes, fromFermentation, gaugeBar, limit } = check;

  const limits = limit.volumes === undefined ? say("pressure", limit.gaugeBar) : `${say("co2", limit.volumes)} and ${say("pressure", limit.gaugeBar)}`;
  const pressure = `${verdict}: ${say("co2", volumes)} at ${say("temperature", temperatureC)} make ${say("pressure", gaugeBar)} in ${bottleWords[kind]}; its working limit is ${limits}${limitBasis}.`;
  const fermentation =
    counted === "not counted" ? notCountedWords : counted === "passed" ? passedWords : fromFermentation > 0 ? ` Of this ${say("co2", fromFermentation)} come from fermentation still to be done.` : "";
  const [finished, unfinished] = kind === "keg" ? [kegAdvice, unfinishedKeg] : [bottleAdvice, unfinishedBottles];
  return `${pressure}${fermentation} ${(fromFermentation > 0 ? unfinished : finished)[verdict]}`;
}
