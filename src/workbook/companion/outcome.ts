/** What became of the workbook, always in words for the brewer. */
export type Outcome =
  | { readonly kind: "written" }
  /** Nothing was changed. */
  | { readonly kind: "unchanged"; readonly message: string }
  /** Writing failed, and so did taking it back: the cells named must be looked at. */
  | { readonly kind: "unsure"; readonly message: string };

/** A change that is not made, and why. The workbook is as it was. */
export class ChangeRefused extends Error {
  override name = "ChangeRefused";
}

/** A change that broke off half-way and could not be taken back. */
export class HalfChanged extends Error {
  override name = "HalfChanged";
}

/** Runs a change once nobody is typing in a cell, and says how it went; never throws. */
export async function carryOut(change: (context: Excel.RequestContext) => Promise<void>): Promise<Outcome> {
  try {
    await Excel.run({ delayForCellEdit: true }, change);
    return { kind: "written" };
  } catch (problem) {
    const reason = problem instanceof Error ? problem.message : String(problem);
    if (problem instanceof HalfChanged) return { kind: "unsure", message: reason };
    return { kind: "unchanged", message: problem instanceof ChangeRefused ? `${reason} Nothing was written.` : `Nothing was written. ${hostWords(problem, reason)}` };
  }
}

/** The host's own errors in words that help; anything else as the host says it. */
function hostWords(problem: unknown, reason: string): string {
  const code = typeof problem === "object" && problem !== null && "code" in problem ? String(problem.code) : "";
  if (code === "AccessDenied") return "The sheet is protected: take the protection off (Review, Unprotect Sheet), then try again.";
  if (code === "InvalidOperationInCellEditMode") return "A cell is being edited: finish it with Enter, then try again.";
  if (code === "ItemNotFound") return "The sheet is gone: somebody deleted or renamed it.";
  return `The spreadsheet said: ${reason}`;
}
