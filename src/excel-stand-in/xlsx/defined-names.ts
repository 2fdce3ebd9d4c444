import type { IWorkbookData } from "@univerjs/core";
import { parseBlock, sheetPrefix, splitSheet } from "./addresses";
import { fromFileFormula, toFileFormula } from "./formula-translation";
import { childrenOf, descend, escapeXml, type XmlElement } from "./xml";

/** A defined name in the grid's resource. `localSheetId` is the id of the one sheet that knows it, or the word for all. */
export interface GridName {
  id: string;
  name: string;
  formulaOrRefString: string;
  localSheetId: string;
  comment?: string;
  hidden?: boolean;
}
export const WHOLE_WORKBOOK = "AllDefaultWorkbook";

/** Names that Excel itself uses; ours of these come from the page layout. */
const RESERVED = /^_xlnm\./i;

/**
 * Names are read from `xl/workbook.xml` directly: hucre leaves out the mark of hidden names, and finds a name's sheet by
 * its spelling.
 * @param sheetIds the ids given to the file's sheets, in the file's order
 */
export function namesFromFile(
  workbook: XmlElement,
  sheetIds: readonly string[],
  functionNames: readonly string[],
): Record<string, GridName> {
  const names: Record<string, GridName> = {};
  childrenOf(descend(workbook, "definedNames"), "definedName").forEach(({ attributes, text }, index) => {
    const sheet = attributes.localSheetId;
    const scope = sheet === undefined ? WHOLE_WORKBOOK : sheetIds[Number(sheet)];
    if (!attributes.name || RESERVED.test(attributes.name) || !scope || !text.trim()) return;
    const id = `name${index + 1}`;
    names[id] = {
      id,
      name: attributes.name,
      formulaOrRefString: meaningFromFile(text, functionNames),
      localSheetId: scope,
      ...(attributes.comment ? { comment: attributes.comment } : {}),
      ...(attributes.hidden === "1" || attributes.hidden === "true" ? { hidden: true } : {}),
    };
  });
  return names;
}

/** The grid writes a plain reference as it is and everything else with an equals sign. */
function meaningFromFile(text: string, functionNames: readonly string[]): string {
  return isReference(text) ? text : fromFileFormula(text, functionNames);
}

const isReference = (text: string): boolean => parseBlock(splitSheet(text).rest) !== undefined;

/** A name that the page layout needs: print area and print titles. */
export interface ReservedName {
  name: string;
  sheetId: string;
  meaning: string;
}

/** The `<definedNames>` element, or "" if there are none. */
export function definedNamesXml(names: readonly GridName[], reserved: readonly ReservedName[], snapshot: IWorkbookData): string {
  const order = snapshot.sheetOrder;
  const items = [
    ...reserved.map((one) => ({ name: one.name, position: order.indexOf(one.sheetId), meaning: one.meaning, more: "" })),
    ...names.map((one) => ({
      name: one.name,
      position: isLocal(one) ? order.indexOf(one.localSheetId) : undefined,
      meaning: toFileFormula(withSheet(one, snapshot)),
      more: `${one.comment ? ` comment="${escapeXml(one.comment)}"` : ""}${one.hidden ? ' hidden="1"' : ""}`,
    })),
  ].filter((item) => item.position !== -1);
  // Excel keeps names in alphabetical order, those of single sheets by sheet.
  items.sort((a, b) =>
    a.name.toLowerCase() < b.name.toLowerCase()
      ? -1
      : a.name.toLowerCase() > b.name.toLowerCase()
        ? 1
        : (a.position ?? -1) - (b.position ?? -1),
  );
  const xml = items.map(
    (item) =>
      `<definedName name="${escapeXml(item.name)}"` +
      `${item.position === undefined ? "" : ` localSheetId="${item.position}"`}${item.more}>${escapeXml(item.meaning)}</definedName>`,
  );
  return xml.length === 0 ? "" : `<definedNames>${xml.join("")}</definedNames>`;
}

const isLocal = (name: GridName): boolean => Boolean(name.localSheetId) && name.localSheetId !== WHOLE_WORKBOOK;

/** In a file a reference always names its sheet; the grid accepts `$B$2` alone for the name's own sheet. */
function withSheet(name: GridName, snapshot: IWorkbookData): string {
  const meaning = name.formulaOrRefString.replace(/^=/, "");
  const sheet = isLocal(name) ? snapshot.sheets[name.localSheetId]?.name : undefined;
  return sheet && splitSheet(meaning).sheet === undefined && isReference(meaning) ? sheetPrefix(sheet) + meaning : meaning;
}
