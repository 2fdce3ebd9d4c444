/** Plans of the batch sheet that there have been. Batch files are counted with them: a field that a plan brings, its files bring. */
export type PlanVersion = 1 | 2 | 3 | 4;

/** The plan of a sheet that is written now. */
export const planVersion = 4 satisfies PlanVersion;
