import { refusal } from "../../../functions/pack/check-words";

/** Beer is packaged in parts: then section 8 gives no figure for the whole, and counts nothing a second time. Only where the block is on the sheet. */
export const inParts = "N(parts_total)>0";

/** So much more in the parts than there is beer is a jug's error (our judgement); beyond it a sugar would go into less beer than it is for. */
export const tooMuchInParts = "N(parts_left)<-0.02*N(parts_beer)";

/** A formula of section 8 for a sheet whose beer may be packaged in parts. */
export const unlessInParts = (hasParts: boolean, formula: string, instead = '""'): string =>
  hasParts ? `IF(${inParts},${instead},${formula})` : formula;

/** A figure, only where the verdict lets it through. */
export const allowedBy = (verdict: string, formula: string): string =>
  `IF(${verdict}="","",IF(ISERROR(FIND("${refusal}",${verdict})),${formula},""))`;
