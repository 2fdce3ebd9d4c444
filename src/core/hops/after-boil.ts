import { cooled } from "./cooling";
import { heated, type HopAcids } from "./isomerisation";

/** What the wort goes through from flame-out to the fermenter. */
export interface AfterBoil {
  readonly boilsAtC: number;
  /** Kept at one temperature for a while, not above the boil. */
  readonly stand: { readonly temperatureC: number; readonly minutes: number } | undefined;
  /** Minutes of chilling in all, the stand not counted, and where it ends; 0 minutes where it is not calculated. */
  readonly chilling: { readonly toC: number; readonly minutes: number };
}

/** A cool room, or the water of a chiller; colder where the wort is to become colder than that. */
const surroundingsOf = (toC: number): number => Math.min(surroundings.atMostC, toC - surroundings.below);
export const surroundings = { atMostC: 15, below: 5 } as const;

/** The hop acids at the end: chilled down to the stand, through the stand, and chilled on. Hops for the stand go in when it begins. */
export function afterBoil(acids: HopAcids, { boilsAtC, stand, chilling }: AfterBoil, added: "by flame-out" | "stand"): HopAcids {
  const standsAtC = Math.min(boilsAtC, stand?.temperatureC ?? boilsAtC);
  const fell = added === "stand" ? acids : chilled(acids, boilsAtC, standsAtC, boilsAtC, chilling);
  const stood = stand === undefined ? fell : heated(fell, stand.minutes, standsAtC);
  return chilled(stood, standsAtC, chilling.toC, boilsAtC, chilling);
}

/** One leg of the chilling; how much of its minutes the leg takes follows from Newton's law of cooling. */
function chilled(acids: HopAcids, fromC: number, toC: number, boilsAtC: number, chilling: AfterBoil["chilling"]): HopAcids {
  if (chilling.minutes === 0 || toC >= fromC || fromC <= chilling.toC) return acids;
  const surroundingsC = surroundingsOf(chilling.toC);
  const endsAtC = Math.max(toC, chilling.toC);
  const distance = (celsius: number): number => celsius - surroundingsC;
  const share = Math.log(distance(fromC) / distance(endsAtC)) / Math.log(distance(boilsAtC) / distance(chilling.toC));
  return cooled(acids, { fromC, toC: endsAtC, minutes: share * chilling.minutes, surroundingsC });
}
