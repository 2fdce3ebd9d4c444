import type { Limits } from "./field";

/*
 * Limits that recur, in the units of the sheet: what is beyond them is a slip, or no home brewery (our judgement). They are wide, since a
 * sheet that was typed so can still travel as a file; what is unlikely within them is for `plausible`, and for the rules.
 */
export const volumes: Limits = [0, 10000];
/** °C or °F. */
export const degrees: Limits = [-30, 250];
export const minutes: Limits = [0, 600];
export const percents: Limits = [0, 100];
export const prices: Limits = [0, 1e6];
/** Specific gravity, or °P, as a hydrometer or a refractometer may show them. */
export const gravities: Limits = [-5, 1200];
