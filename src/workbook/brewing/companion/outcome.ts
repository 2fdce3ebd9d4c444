import { hostWords } from "../../grid/words/host-words";

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
    if (problem instanceof HalfChanged) return { kind: "unsure", message: problem.message };
    return {
      kind: "unchanged",
      message: problem instanceof ChangeRefused ? `${problem.message} Nothing was written.` : `Nothing was written. ${hostWords(problem)}`,
    };
  }
}
