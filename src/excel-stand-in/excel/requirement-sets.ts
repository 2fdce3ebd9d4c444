/**
 * The newest requirement set of each name from which the stand-in offers something. Sets build on each other, and no
 * host offers a member because of its number alone: what our own code uses is there, and a test holds these numbers to
 * the classes (tests/excel-stand-in/excel/requirement-sets.test.ts).
 */
const OFFERED: Readonly<Record<string, string>> = {
  ExcelApi: "1.18",
  SharedRuntime: "1.1",
  CustomFunctionsRuntime: "1.3",
  File: "1.1",
  CompressedFile: "1.1",
  Settings: "1.1",
};

/** Stands in for Office.RequirementSetSupport. Without a version, 1.1 is meant. */
export function isSetSupported(name: string, version: string | number = "1.1"): boolean {
  const offered = Object.entries(OFFERED).find(([known]) => known.toLowerCase() === name.toLowerCase())?.[1];
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
