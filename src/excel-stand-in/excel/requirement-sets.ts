/**
 * The newest requirement set of each name from which the stand-in offers something. Sets build on each other, and no
 * host offers a member because of its number alone: what our own code uses is there, and a test holds these numbers to
 * the classes (tests/excel-stand-in/excel/requirement-sets.test.ts).
 */
const OFFERED: Readonly<Record<string, string>> = {
  ExcelApi: "1.20",
  SharedRuntime: "1.1",
  CustomFunctionsRuntime: "1.3",
  File: "1.1",
  CompressedFile: "1.1",
};

/**
 * Stands in for Office.RequirementSetSupport. Without a version, 1.1 is meant.
 * @param excelApi the n of ExcelApi 1.n where the stand-in is cut to an older Excel
 */
export function isSetSupported(name: string, version: string | number = "1.1", excelApi?: number): boolean {
  const [known, newest] = Object.entries(OFFERED).find(([set]) => set.toLowerCase() === name.toLowerCase()) ?? [];
  const offered = known === "ExcelApi" && excelApi !== undefined ? `1.${excelApi}` : newest;
  return offered !== undefined && isAtMost(String(version), offered);
}

/** "1.9" comes before "1.18". */
function isAtMost(wanted: string, offered: string): boolean {
  const [[major = 0, minor = 0], [offeredMajor = 0, offeredMinor = 0]] = [wanted, offered].map((text) => text.split(".").map(Number)) as [
    number[],
    number[],
  ];
  return major < offeredMajor || (major === offeredMajor && minor <= offeredMinor);
}
