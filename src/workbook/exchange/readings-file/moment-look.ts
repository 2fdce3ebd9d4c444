import { readMoment } from "./read-moment";

/** A text that could be a date in some order; whole small numbers are not. */
export const looksLikeMoment = (text: string): boolean =>
  readMoment(text, "day first", "wall", Number) !== undefined || readMoment(text, "month first", "wall", Number) !== undefined;
