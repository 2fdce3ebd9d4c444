import type { Event } from "../../core/day/schedule";
import type { Context } from "../describe";

/** What a line of the brew day says: what to do, how much, and what to beware of. */
interface Line {
  readonly what: string;
  readonly amount: string;
  readonly caution: string;
}

const hopCaution = "Hops make the boil rise: turn the heat down, add them slowly.";

/** The words for an event. Steps bring their own caution; the rows that we add ourselves bring ours. */
export function timelineWords(event: Event, boilMinutes: number, context: Context): Line {
  switch (event.kind) {
    case "step":
      return { what: event.step.step, amount: "", caution: event.step.caution ?? "" };
    case "hop":
      return { what: `Add ${event.hop.hop}`, amount: event.hop.massG === undefined ? "" : amount(event.hop.massG, context), caution: hopCaution };
    case "boil begins":
      return { what: `Boil begins: start the ${boilMinutes}-minute clock`, amount: "", caution: "Stay with it: foam can boil over in seconds. Lid off, heat down." };
    case "flame out":
      return { what: "Flame out: the boil is over", amount: "", caution: "Gas off before you lift it. From here only sanitised things touch it." };
    case "done":
      return { what: "Brew day done", amount: "", caution: "" };
  }
}

/** "28 g", "7.5 g", "1.00 oz": as finely as a kitchen scale weighs. */
function amount(massG: number, { units, show }: Context): string {
  const mass = show("smallMass", massG);
  if (units === "us") return `${mass.toFixed(2)} oz`;
  return `${mass < 10 ? Number(mass.toFixed(1)) : Math.round(mass)} g`;
}
