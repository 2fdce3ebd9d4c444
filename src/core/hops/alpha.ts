/**
 * Alpha acid as it is printed on a packet, % (our judgement): what is no more than the first was typed as a share of one, and above the
 * second a decimal point is missing.
 */
export const packetAlphaPercent = { least: 0.3, most: 25 } as const;
