import type { Event } from "../../core/day/schedule";
import type { Context } from "../describe";
import { quantity } from "../quantities";

/** What a line of the brew day says: what to do, how much, and what to beware of. */
interface Line {
  readonly what: string;
  readonly amount: string;
  readonly caution: string;
}

/** What the lines say that are ours, and by which a reader knows them again; of those with a figure, how they begin. */
export const ownLines = {
  "boil begins": "Boil begins: ",
  "flame out": "Flame out: the boil is over",
  "no boil": "No boil: flame off, it was hot long enough",
  stand: "Stand: ",
  done: "Brew day done",
} as const;

/** "Add Cascade", "Add Cascade for the stand": the words of a hop's line. */
export function hopWords(hop: string, added: number | string): string {
  const name = hop === "" ? "hops" : hop;
  if (added === "first wort") return `First wort: ${name} into the kettle`;
  if (added === "dry") return `Dry hops, another day: ${name}`;
  return added === "stand" ? `Add ${name} for the stand` : `Add ${name}`;
}

/** What to beware of at the lines that are ours. */
export const ownCautions = {
  "boil begins": "Stay with it: foam can boil over in seconds. Lid off, heat down.",
  "flame out": "Gas or power off first. From here only sanitised things touch it.",
  "no boil": "It was never sterile and no coil boiled: sanitise all, the chiller too.",
  stand: "Water on slowly: steam, scalding water first; keep clear. Off there, lid on.",
} as const;

const hopCautions = {
  "first wort": "Before it boils. They stay in: expect more foam when the boil begins.",
  stand: "Still scalding. Push them under with a long, sanitised spoon; lid on.",
  dry: "Into the fermenter, not today. Sanitised; add slowly, beer can gush.",
} as const;

/** Boiling wort foams up over hops; hot wort only wets them. */
export function hopCaution(added: number | string): string {
  if (added === "first wort" || added === "stand" || added === "dry") return hopCautions[added];
  return added === 0
    ? "Flame is out: stir them in gently, then chill. It still scalds."
    : "Hops make the boil rise: turn the heat down, add them slowly.";
}

/** The words for an event. Steps bring their own caution; the rows that we add ourselves bring ours. */
export function timelineWords(
  event: Event,
  boilMinutes: number,
  standTemperatureC: number | undefined,
  standMinutes: number,
  context: Context,
): Line {
  switch (event.kind) {
    case "step":
      return { what: event.step.step, amount: "", caution: event.step.caution ?? "" };
    case "hop":
      return {
        what: hopWords(event.hop.hop, event.hop.added),
        amount: event.hop.massG === undefined ? "" : amount(event.hop.massG, context),
        caution: hopCaution(event.hop.added),
      };
    case "boil begins":
      return {
        what: `${ownLines["boil begins"]}start the ${boilMinutes}-minute clock`,
        amount: "",
        caution: ownCautions["boil begins"],
      };
    case "flame out":
      return { what: ownLines["flame out"], amount: "", caution: ownCautions["flame out"] };
    case "no boil":
      return { what: ownLines["no boil"], amount: "", caution: ownCautions["no boil"] };
    case "stand":
      return {
        what: `${ownLines.stand}${standTemperatureC === undefined ? "" : `cool to ${Math.round(context.show("temperature", standTemperatureC))} ${quantity("temperature").unit[context.units]}, `}keep it ${standMinutes} min`,
        amount: "",
        caution: ownCautions.stand,
      };
    case "done":
      return { what: ownLines.done, amount: "", caution: "" };
  }
}

/** "28 g", "7.5 g", "1.00 oz": as finely as a kitchen scale weighs. */
function amount(massG: number, { units, show }: Context): string {
  // A hair more: 8.35 g is 8.4 g, whatever the binary fraction behind it.
  const mass = show("smallMass", massG) + 1e-9;
  if (units === "us") return `${mass.toFixed(2)} oz`;
  return `${mass < 10 ? Number(mass.toFixed(1)) : Math.round(mass)} g`;
}
