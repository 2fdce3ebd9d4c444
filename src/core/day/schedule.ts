import { BrewingError } from "../brewing-error";
import type { WhenAdded } from "../hops/places";

/** A step as the brewer lists it. `minutes` lasts that long before and after the boil; in the boil it is what is left of it. */
export interface Step {
  readonly step: string;
  readonly part: "before" | "boil" | "after";
  readonly minutes: number;
  readonly caution?: string | undefined;
}

/** A hop addition: what is left of the boil when it goes in, or where else it goes in. */
export interface HopAddition {
  readonly hop: string;
  readonly added: WhenAdded;
  readonly massG?: number | undefined;
}

/** Hot wort kept for hops after flame-out: how long, and how long it takes to cool down to it. */
export interface StandTimes {
  readonly minutes: number;
  readonly afterMinutes: number;
}

/** One line of the day: what happens, when, and how far into the boil. What is for another day has no minute. */
export type Event = { readonly minute?: number; readonly boilMinute?: number } & (
  | { readonly kind: "step"; readonly step: Step }
  | { readonly kind: "hop"; readonly hop: HopAddition }
  | { readonly kind: "boil begins" | "flame out" | "no boil" | "stand" | "done" }
);

/** What goes in at flame-out is stirred in before the chilling begins. */
export const stirringMinutes = 1;

/** Refuses an addition that would have to go in before the boil begins. */
function requireWithinBoil(name: string, minutes: number, boilMinutes: number): void {
  if (minutes > boilMinutes)
    throw new BrewingError(
      "impossible",
      `boil_minutes is ${boilMinutes} min, but ${name} is to boil ${minutes} min; boil longer, or correct the minutes`,
    );
}

/**
 * The brew day in order. Steps before the boil follow one another, first-wort hops going in before the last of them, which
 * brings it to the boil; the boil begins when they are done. Steps and hops in the boil stand at their minute, steps
 * before hops and both as listed where they coincide; a step that wants more minutes than the boil has stands at its
 * beginning, and without a boil in the last step before it. At the end of the boil comes flame-out, then what is due with no minutes left, then the stand with its hops;
 * steps after the boil follow one another to the end. Dry hops come last, without a time: they are for another day.
 *
 * @param boilMinutes length of the boil; 0 = the wort is heated and never boils
 * @returns events with `minute` from the start of the day
 * @throws BrewingError "impossible" for a hop that is to boil longer than the boil
 */
export function brewDay(
  steps: readonly Step[],
  hops: readonly HopAddition[],
  boilMinutes: number,
  stand: StandTimes = { minutes: 0, afterMinutes: 0 },
): Event[] {
  const hopsAt = (place: WhenAdded, minute?: number): Event[] =>
    hops.filter(({ added }) => added === place).map((hop) => ({ kind: "hop", hop, ...(minute !== undefined && { minute }) }));
  const before = inARow(
    steps.filter(({ part }) => part === "before"),
    0,
  );
  const boilBegins = before.endsAt;
  const heating = before.events.at(-1);
  const flameOut = boilBegins + boilMinutes;
  const boils = boilMinutes > 0;
  // Without a boil the last minutes of heating take its place: what is to be soaked is soaked by the end of them.
  const room = boils ? boilMinutes : boilBegins - (heating?.minute ?? boilBegins);
  const boil = inTheBoil(steps, hops, boilMinutes, room).map(({ left, wanted, ...what }) => ({
    wanted,
    event: { ...what, minute: flameOut - left, ...(boils && { boilMinute: boilMinutes - left }) },
  }));
  const eventsWhere = (holds: (wanted: number) => boolean): Event[] => boil.filter(({ wanted }) => holds(wanted)).map(({ event }) => event);
  const atFlameOut = eventsWhere((wanted) => wanted <= 0);
  const stirred = flameOut + (atFlameOut.some(({ kind }) => kind === "hop") ? stirringMinutes : 0);
  const standHops = hopsAt("stand", stirred + stand.afterMinutes);
  const stands = stand.minutes > 0 || standHops.length > 0;
  const after = inARow(
    steps.filter(({ part }) => part === "after"),
    stands ? stirred + stand.afterMinutes + Math.max(stand.minutes, stirringMinutes) : stirred,
  );
  return [
    ...before.events.slice(0, -1),
    ...hopsAt("first wort", heating?.minute ?? 0),
    ...(heating ? [heating] : []),
    ...(boils ? [{ kind: "boil begins" as const, minute: boilBegins, boilMinute: 0 }] : []),
    ...eventsWhere((wanted) => wanted > 0),
    boils ? { kind: "flame out", minute: flameOut, boilMinute: boilMinutes } : { kind: "no boil", minute: flameOut },
    ...atFlameOut,
    ...(stands ? [{ kind: "stand" as const, minute: stirred }, ...standHops] : []),
    ...after.events,
    { kind: "done", minute: after.endsAt },
    ...hopsAt("dry"),
  ];
}

type InBoil = { readonly wanted: number; readonly left: number } & (
  { readonly kind: "step"; readonly step: Step } | { readonly kind: "hop"; readonly hop: HopAddition }
);

/** Steps and hops of the boil, those with most of it left first. */
function inTheBoil(steps: readonly Step[], hops: readonly HopAddition[], boilMinutes: number, room: number): InBoil[] {
  const additions = hops.flatMap((hop): InBoil[] => {
    if (typeof hop.added !== "number") return [];
    requireWithinBoil(hop.hop === "" ? "a hop without a name" : hop.hop, hop.added, boilMinutes);
    return [{ kind: "hop", hop, wanted: hop.added, left: hop.added }];
  });
  const vessels = steps
    .filter(({ part }) => part === "boil")
    .map((step): InBoil => ({ kind: "step", step, wanted: step.minutes, left: Math.min(step.minutes, room) }));
  return [...vessels, ...additions].sort((one, other) => other.left - one.left);
}

/** Steps that follow one another from a minute on. */
function inARow(steps: readonly Step[], from: number): { events: (Event & { readonly minute: number })[]; endsAt: number } {
  let minute = from;
  const events = steps.map((step) => {
    const event = { kind: "step" as const, step, minute };
    minute += step.minutes;
    return event;
  });
  return { events, endsAt: minute };
}
