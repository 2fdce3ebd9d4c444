import { longestSheetName } from "./shortened";

/** What Excel does not allow in the name of a sheet, in words; undefined when the name is fine. */
export function sheetNameProblem(name: string): string | undefined {
  if (name.trim() === "") return "The batch needs a name: its sheet gets it, too.";
  if (name.length > longestSheetName) return `"${name}" has ${name.length} characters; the name of a sheet may have ${longestSheetName}.`;
  const forbidden = /[\\/?*[\]:]/.exec(name)?.[0];
  if (forbidden) return `The name of a sheet may not hold "${forbidden}".`;
  if (name.startsWith("'") || name.endsWith("'")) return "The name of a sheet may not begin or end with an apostrophe.";
  if (name.toLowerCase() === "history") return 'Excel keeps the name "History" for itself.';
  return undefined;
}
