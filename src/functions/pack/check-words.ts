import type { VesselKind } from "../../core/pack/bottle-kinds";
import { readingError, type BottleCheck } from "../../core/pack/bottle-check";
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
export const leaveThem = "do not open or move them; keep people away and cool the room.";
export const filledAlready = `Bottles already filled: ${leaveThem}`;
export const waitForIt = "wait until two readings a day apart agree at the gravity expected";

/**
 * Who reads a verdict gives a sugar or a pressure beside it only where this word is not in it: sheet, recipe page, pane and
 * unplugged copy ask the sentence itself, so that none of them has a rule of its own.
 */
export const refusal = "Do not";

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

/** The same of beer that still ferments, or whose last point would make the pressure too high: there is one remedy. */
export const unfinishedBottles: Readonly<Record<BottleCheck["verdict"], string>> = {
  within: `Do not bottle yet: ${waitForIt}.`,
  close: `Do not bottle yet: ${waitForIt}.`,
  over: `Do not bottle: ${waitForIt}. ${filledAlready}`,
};
export const unfinishedKeg: Readonly<Record<BottleCheck["verdict"], string>> = {
  within: `Do not keg yet: ${waitForIt}.`,
  close: `Do not keg yet: ${waitForIt}.`,
  over: `Do not keg: ${waitForIt}. A keg already filled: keep it cold and let gas off.`,
};

/** What a limit rests on, said beside it. */
export const limitBasis = " (common practice, from memory)";

/** Beer below the gravity expected shows that the expectation was wrong; where it ends nobody knows then. */
export const passedWords =
  " What fermentation may still add is not known: the beer is below the gravity expected. Bottle only when two readings a day apart agree.";
export const notCountedWords = " What fermentation may still add is not counted: that takes the gravity now and the one expected.";

/**
 * The verdict in a sentence or two. The first word is the verdict itself, so that a sheet can colour it.
 * Nowhere does it call a bottle safe: the limits are from memory, and glass has a history.
 *
 * @param toFall gravity still to fall, in points; undefined where nobody said
 */
export function checkWords(
  kind: VesselKind,
  temperatureC: number,
  check: BottleCheck,
  toFall: number | undefined,
  { units, show }: Context,
): string {
  const digits: Partial<Record<QuantityName, number>> = { co2: 2, pressure: units === "us" ? 1 : 2, temperature: 1 };
  const say = (name: QuantityName, value: number): string =>
    `${Number(show(name, value).toFixed(digits[name]))} ${name === "co2" ? "volumes" : quantity(name).unit[units]}`;
  const { verdict, volumes, fromFermentation, gaugeBar, limit } = check;

  const limits =
    limit.volumes === undefined ? say("pressure", limit.gaugeBar) : `${say("co2", limit.volumes)} and ${say("pressure", limit.gaugeBar)}`;
  const pressure = `${verdict}: ${say("co2", volumes)} at ${say("temperature", temperatureC)} make ${say("pressure", gaugeBar)} in ${bottleWords[kind]}; its working limit is ${limits}${limitBasis}.`;
  const fermentation =
    toFall === undefined
      ? notCountedWords
      : toFall < -readingError
        ? passedWords
        : fromFermentation > 0
          ? ` Of this ${say("co2", fromFermentation)} come from fermentation still to be done.`
          : "";
  // A keg has its valve for a point; of a bottle the core counts it.
  const waits = (toFall ?? 0) > readingError || (verdict !== "within" && fromFermentation > 0);
  const [finished, unfinished] = kind === "keg" ? [kegAdvice, unfinishedKeg] : [bottleAdvice, unfinishedBottles];
  return `${pressure}${fermentation} ${(waits ? unfinished : finished)[verdict]}`;
}
