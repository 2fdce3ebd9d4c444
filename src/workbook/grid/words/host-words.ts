import { ToldInFull } from "./told-in-full";

/** What an error says, whatever was thrown. */
export const reasonOf = (problem: unknown): string => (problem instanceof Error ? problem.message : String(problem));

/**
 * What is said of a failure: first what became of the workbook, then why.
 *
 * @param unchanged what did not happen: "The batch was not written, and the workbook is as it was."
 */
export const failureWords = (unchanged: string, problem: unknown): string =>
  problem instanceof ToldInFull ? problem.message : `${unchanged} ${hostWords(problem)}`;

/** Excel does not read a sheet's names while another workbook is in front (OfficeDev/office-js issue 6365). */
export const isElsewhere = (problem: unknown): boolean =>
  typeof problem === "object" && problem !== null && "code" in problem && problem.code === "InvalidSelection";

/** The host's own errors in words that help; anything else as the host says it. What we found ourselves needs no such words. */
export function hostWords(problem: unknown): string {
  if (problem instanceof ToldInFull) return problem.message;
  const code = typeof problem === "object" && problem !== null && "code" in problem ? String(problem.code) : "";
  const said = `The spreadsheet said: ${reasonOf(problem)}`;
  // It also comes for a protected workbook and for one that is open for reading only, so Excel's own reason stands first.
  if (code === "AccessDenied")
    return `${said} If the sheet is protected, take the protection off (Review, Unprotect Sheet), then try again.`;
  if (isElsewhere(problem)) return "Another workbook is in front: come back to this one, then try again.";
  if (code === "InvalidOperationInCellEditMode") return "A cell is being edited: finish it with Enter, then try again.";
  if (code === "ItemNotFound") return "The sheet is gone, or a name or table on it: somebody deleted or renamed it.";
  return said;
}
