import { styles, type Range } from "../../core/beer/style";
import { escapeHtml, htmlTable } from "./html";

/**
 * Codes that are ours: the guidelines name the varieties of Specialty IPA (21B) and the historical beers (27) without letters of their
 * own (from memory), and a cell needs something short to tell them by.
 */
export const isOurCode = (code: string): boolean => /^21B[a-g]$|^27[A-I]$/.test(code);

/** Every style that has figures: its code, its whole name in the guidelines, and its ranges as they are printed there. */
export function styleList(): string {
  const range = ([low, high]: Range, digits: number): string => `${low.toFixed(digits)} to ${high.toFixed(digits)}`;
  const plain = ([low, high]: Range): string => `${low} to ${high}`;
  const rows = styles.map(({ code, name, originalGravity, finalGravity, abvPercent, ibu, srm }) => [
    `${code}${isOurCode(code) ? " *" : ""}`,
    escapeHtml(name),
    range(originalGravity, 3),
    range(finalGravity, 3),
    range(abvPercent, 1),
    plain(ibu),
    plain(srm),
  ]);
  return `<p>* A code of ours: the guidelines give these a name and no letter of their own. The name works as well.</p>
${htmlTable(["code", "name in the guidelines", "original gravity", "final gravity", "alcohol, % v/v", "IBU", "SRM"], rows)}`;
}
