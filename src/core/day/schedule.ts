import { BrewingError } from "../brewing-error";

/** A step as the brewer lists it. `minutes` lasts that long before and after the boil; in the boil it is what is left of it. */
export interface Step {
  readonly step: string;
  readonly part: "before" | "boil" | "after";
  readonly minutes: number;
  readonly caution?: string | undefined;
}

/** A hop addition; `minutes` is what is left of the boil when it goes in. */
export interface HopAddition {
  readonly hop: string;
  readonly minutes: number;
  readonly massG?: number | undefined;
}

/** One line of the day: what happens, when, and how far into the boil. */
export type Event = { readonly minute: number; readonly boilMinute?: number } & (
  | { readonly kind: "step"; readonly step: Step }
  | { readonly kind: "hop"; readonly hop: HopAddition }
  | { readonly kind: "boil begins" | "flame out" | "done" }
);

/** Refuses an addition that would have to go in before the boil begins. */
function requireWithinBoil(name: string, minutes: number, boilMinutes: number): void {
  if (minutes > boilMinutes) throw new BrewingError("impossible", `boil_minutes is ${boilMinutes} min, but ${name} is to boil ${minutes} min; boil longer, or correct the minutes`);
}

/**
 * The brew day in order. Steps before the boil follow one another; the boil begins when they are done; steps and hops
 * in the boil stand at their minute, steps before hops and both as listed where they coincide; at the end of the boil
 * comes flame-out, then what is due with no minutes left; steps after the boil follow one another to the end.
 *
 * @param boilMinutes length of the boil, above 0
 * @returns events with `minute` from the start of the day
 * @throws BrewingError "impossible" for an addition longer than the boil
 */
export function brewDay(steps: readonly Step[], hops: readonly HopAddition[], boilMinutes: number): Event[] {
  const before = inARow(steps.filter(({ part }) => part === "before"), 0);
  const boilBegins = before.endsAt;
  const inTheBoil: Event[] = [
    ...steps.filter(({ part }) => part === "boil").map((step) => ({ kind: "step" as const, step, left: step.minutes, name: step.step })),
    ...hops.map((hop) => ({ kind: "hop" as const, hop, left: hop.minutes, name: hop.hop })),
  ]
    .sort((one, other) => other.left - one.left)
    .map(({ left, name, ...event }) => {
      requireWithinBoil(name, left, boilMinutes);
      return { ...event, minute: boilBegins + boilMinutes - left, boilMinute: boilMinutes - left };
    });
  const flameOut = boilBegins + boilMinutes;
  const after = inARow(steps.filter(({ part }) => part === "after"), flameOut);
  return [
    ...before.events,
    { kind: "boil begins", minute: boilBegins, boilMinute: 0 },
    ...inTheBoil.filter(({ minute }) => minute < flameOut),
    { kind: "flame out", minute: flameOut, boilMinute: boilMinutes },
    ...inTheBoil.filter(({ minute }) => minute >= flameOut),
    ...after.events,
    { kind: "done", minute: after.endsAt },
  ];
}

/** Steps that follow one another from a minute on. */
function inARow(steps: readonly Step[], from: number): { events: Event[]; endsAt: number } {
  let minute = from;
  const events = steps.map((step): Event => {
    const event: Event = { kind: "step", step, minute };
    minute += step.minutes;
    return event;
  });
  return { events, endsAt: minute };
}
