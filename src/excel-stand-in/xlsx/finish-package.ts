import { errorsFromMarks } from "./error-marks";
import { withFontsInOrder } from "./font-order";
import { partText, setPartText, type PackageParts } from "./package-parts";
import { prune } from "./part-copies";
import { withoutEmptyStyle } from "./tables";

/** What we say as the program that wrote a file. The file names no person. */
export const APPLICATION = "Gylebook";

/**
 * Puts right what hucre 1.0.0 cannot be told: names (see defined-names.ts), no forced calculation on opening (without
 * the add-in it would turn good results into #NAME?), the program's name, fonts whose parts stand in order,
 * errors as results, and no loose ends.
 */
export function finishPackage(parts: PackageParts, definedNames: string): void {
  const workbook = (partText(parts, "xl/workbook.xml") ?? "")
    .replace(/<definedNames>[\s\S]*?<\/definedNames>/, "")
    .replace(/<calcPr\b[^>]*\/>/, `${definedNames}<calcPr calcId="191029"/>`);
  setPartText(parts, "xl/workbook.xml", workbook);
  const app = (partText(parts, "docProps/app.xml") ?? "").replace(
    /<Application>[^<]*<\/Application>/,
    `<Application>${APPLICATION}</Application>`,
  );
  setPartText(parts, "docProps/app.xml", app);
  setPartText(parts, "xl/styles.xml", withFontsInOrder(partText(parts, "xl/styles.xml") ?? ""));
  for (const path of parts.keys()) {
    if (/^xl\/worksheets\/sheet\d+\.xml$/.test(path)) setPartText(parts, path, errorsFromMarks(partText(parts, path)!));
    if (/^xl\/tables\/table\d+\.xml$/.test(path)) setPartText(parts, path, withoutEmptyStyle(partText(parts, path)!));
  }
  prune(parts);
}
