/**
 * SRM and EBC both measure how much light of 430 nm beer takes away in 1 cm: SRM = 12.7 A, EBC = 25 A (the
 * definitions as encyclopedias print them), so they differ by a plain factor.
 */
export const srmPerAbsorbance = 12.7;
export const ebcPerAbsorbance = 25;

/** Colour in EBC from colour in SRM, both 0 or more. */
export function ebcFromSrm(srm: number): number {
  return (srm * ebcPerAbsorbance) / srmPerAbsorbance;
}

/** Colour in SRM from colour in EBC, both 0 or more. */
export function srmFromEbc(ebc: number): number {
  return (ebc * srmPerAbsorbance) / ebcPerAbsorbance;
}

/** SRM = slope × °L − above. */
export const lovibondLine = { slope: 1.3546, above: 0.76 } as const;

/** Degrees Lovibond of a malt from its colour in SRM, by the maltsters' line SRM = 1.3546 °L − 0.76. */
export function lovibondFromSrm(srm: number): number {
  return (srm + lovibondLine.above) / lovibondLine.slope;
}

/** Degrees Lovibond of a malt from its colour in EBC (the scale in use since 1990); 0 means that it gives no colour. */
export function lovibondFromEbc(ebc: number): number {
  return ebc === 0 ? 0 : lovibondFromSrm(srmFromEbc(ebc));
}

/** Malt colour in EBC from °L, the way back from `lovibondFromEbc`; 0, and what the line puts below nothing, gives no colour. */
export function ebcFromLovibond(lovibond: number): number {
  return lovibond === 0 ? 0 : Math.max(0, ebcFromSrm(lovibond * lovibondLine.slope - lovibondLine.above));
}
