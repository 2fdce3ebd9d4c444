import type { BatchContents } from "../contents";
import { quantity } from "../../../functions/quantities";
import { kegAdvice, refusal } from "../../../functions/pack/check-words";

/** Beer is packaged in parts: then section 8 gives no figure for the whole, and counts nothing a second time. Only where the block is on the sheet. */
export const inParts = "N(parts_total)>0";

/** So much more in the parts than there is beer is a jug's error (our judgement); beyond it a sugar would go into less beer than it is for. */
export const tooMuchInParts = "N(parts_left)<-0.02*N(parts_beer)";

/** A formula of section 8 for a sheet whose beer may be packaged in parts. */
export const unlessInParts = (hasParts: boolean, formula: string, instead = '""'): string =>
  hasParts ? `IF(${inParts},${instead},${formula})` : formula;

/** Words of a verdict that the keg's plate alone speaks for. */
export const aboveItsPlate = "above the pressure on its plate";

/** The verdict on a pressure, or before it that the keg's own plate bears less: then no figure stands behind it. Only where the sheet knows the plate. */
export const withinItsPlate = (
  { units, kegLine }: Pick<BatchContents, "units" | "kegLine">,
  { isKeg, carbonation, temperature, verdict }: Readonly<Record<"isKeg" | "carbonation" | "temperature" | "verdict", string>>,
): string => {
  if (!kegLine) return verdict;
  const [unit, degrees] = [quantity("pressure").unit[units], quantity("temperature").unit[units]];
  // A pressure that cannot be told, or that no keg bears, is the verdict's own affair.
  const pressure = `IFERROR(GYLE.PACK.PRESSURE(${carbonation},${temperature},units,altitude),0)`;
  // Without the pressure itself: a second call beside the first would say no more.
  const words = `"over: a keg would stand ${aboveItsPlate}: "&FIXED(${carbonation},1,TRUE)&" volumes at "&FIXED(${temperature},0,TRUE)&" ${degrees} make more than the "&FIXED(keg_plate,${units === "us" ? 0 : 1},TRUE)&" ${unit} that it says. It can burst. ${kegAdvice.over}"`;
  return `IF(IF(AND(${isKeg},N(keg_plate)>0,ISNUMBER(${temperature})),${pressure}>keg_plate,FALSE),${words},${verdict})`;
};
/** A figure, only where the verdict lets it through. */
export const allowedBy = (verdict: string, formula: string): string =>
  `IF(${verdict}="","",IF(ISERROR(FIND("${refusal}",${verdict})),${formula},""))`;
