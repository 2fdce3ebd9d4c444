import type { ProtectionFlag, SheetProtection } from "../excel/sheet-extras";
import { escapeXml } from "./xml";

/** What a protected sheet still allows, by the file's attribute: in a file 1 means "locked" (ECMA-376 part 1, 18.3.1.85). */
const FLAGS: Record<string, { flag: ProtectionFlag; lockedByDefault: boolean }> = {
  objects: { flag: "allowEditObjects", lockedByDefault: false },
  scenarios: { flag: "allowEditScenarios", lockedByDefault: false },
  formatCells: { flag: "allowFormatCells", lockedByDefault: true },
  formatColumns: { flag: "allowFormatColumns", lockedByDefault: true },
  formatRows: { flag: "allowFormatRows", lockedByDefault: true },
  insertColumns: { flag: "allowInsertColumns", lockedByDefault: true },
  insertRows: { flag: "allowInsertRows", lockedByDefault: true },
  insertHyperlinks: { flag: "allowInsertHyperlinks", lockedByDefault: true },
  deleteColumns: { flag: "allowDeleteColumns", lockedByDefault: true },
  deleteRows: { flag: "allowDeleteRows", lockedByDefault: true },
  sort: { flag: "allowSort", lockedByDefault: true },
  autoFilter: { flag: "allowAutoFilter", lockedByDefault: true },
  pivotTables: { flag: "allowPivotTables", lockedByDefault: true },
};
const PASSWORD = ["password", "algorithmName", "hashValue", "saltValue", "spinCount"];

type Attributes = Record<string, string>;
const isOne = (value: string | undefined): boolean => value === "1" || value === "true";

/** Read from the sheet's own XML: hucre drops the password of newer files. */
export function protectionFromFile(attributes: Attributes | undefined): SheetProtection | undefined {
  if (!attributes || !isOne(attributes.sheet)) return undefined;
  const options: SheetProtection["options"] = {};
  for (const [attribute, { flag, lockedByDefault }] of Object.entries(FLAGS)) {
    const value = attributes[attribute];
    options[flag] = !(value === undefined ? lockedByDefault : isOne(value));
  }
  options.selectionMode = isOne(attributes.selectUnlockedCells) ? "None" : isOne(attributes.selectLockedCells) ? "Unlocked" : "Normal";
  return { options, ...(PASSWORD.some((name) => attributes[name]) ? { hasPassword: true } : {}) };
}

/** The `<sheetProtection>` element. A password is only ever passed on from the opened file; we neither know nor set one. */
export function protectionXml(protection: SheetProtection | undefined, carried: Attributes | undefined): string {
  if (!protection) return "";
  const attributes: Attributes = { sheet: "1" };
  for (const [attribute, { flag, lockedByDefault }] of Object.entries(FLAGS)) {
    // Not said is Excel's default for a sheet protected in its window: nothing of these is allowed.
    const locked = !(protection.options[flag] ?? false);
    if (locked !== lockedByDefault) attributes[attribute] = locked ? "1" : "0";
  }
  const mode = protection.options.selectionMode ?? "Normal";
  if (mode !== "Normal") attributes.selectLockedCells = "1";
  if (mode === "None") attributes.selectUnlockedCells = "1";
  if (protection.hasPassword) for (const name of PASSWORD) if (carried?.[name]) attributes[name] = carried[name];
  return `<sheetProtection${Object.entries(attributes)
    .map(([name, value]) => ` ${name}="${escapeXml(value)}"`)
    .join("")}/>`;
}
