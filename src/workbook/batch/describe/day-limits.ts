import type { Limits } from "./field";

/** From 1 January 1990 to the end of 2100 as day numbers, for sheets, files and Check: what is outside is no day of a brewery. */
export const dayLimits: Limits = [32874, 73415.99999];
