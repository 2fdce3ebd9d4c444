/** Specific gravities that wort and beer of a home brewery can have (our judgement): the limits of our functions, and of what is read from files. */
export const gravityLimits = { atLeast: 0.98, atMost: 1.2 } as const;
