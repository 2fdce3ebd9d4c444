import { gravity } from "../vocabulary";

/** The gravity of a wort that holds something to ferment. */
export const originalGravity = gravity("Specific gravity of the wort when the yeast goes in.", { limits: { atLeast: 1.001, atMost: 1.2 } });
