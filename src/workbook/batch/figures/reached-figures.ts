import type { BatchContents } from "../contents";
import { figure, shownWords } from "./on-its-sheet";

/** What a batch sheet shows as reached; undefined where it would be blank or show an error. */
export interface ReachedFigures {
  /** By the reading; undefined before there is one. */
  readonly og: number | undefined;
  /** Gravity of the newest reading, finished or not. */
  readonly gravityNow: number | undefined;
  /** Only once the readings agree, as the alcohol. */
  readonly fg: number | undefined;
  readonly abv: number | undefined;
  readonly ibu: number | undefined;
  readonly colour: number | undefined;
  readonly verdict: string;
}

/** The figures that follow from a batch's own readings, never from figures that somebody else computed. */
export const reachedFigures = (batch: BatchContents): ReachedFigures => ({
  og: figure(batch, "og_shown"),
  gravityNow: figure(batch, "fg"),
  fg: figure(batch, "fg_reached"),
  abv: figure(batch, "abv_reached"),
  ibu: figure(batch, "ibu_reached"),
  colour: figure(batch, "colour_reached"),
  verdict: shownWords(batch, "verdict"),
});
