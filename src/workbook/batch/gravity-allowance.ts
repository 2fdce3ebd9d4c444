/**
 * How far an original-gravity reading may stand from what malt and volume give before the sheet doubts it: a reading
 * good to ±0.002 and a volume good to about 5 % (common practice).
 */
export const gravityAllowance = 0.008;
