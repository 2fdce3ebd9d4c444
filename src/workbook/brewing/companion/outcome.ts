import { failureWords } from "../../grid/words/host-words";
import { ToldInFull, Unsure } from "../../grid/words/told-in-full";

/** What became of the workbook, always in words for the brewer. */
export type Outcome =
  | { readonly kind: "written" }
  /** Nothing was changed. */
  | { readonly kind: "unchanged"; readonly message: string }
  /** Nobody knows, or writing failed and so did taking it back: the cells named must be looked at. */
  | { readonly kind: "unsure"; readonly message: string };

/** A change that is not made, and why. The workbook is as it was. */
export class ChangeRefused extends ToldInFull {
  override name = "ChangeRefused";

  constructor(why: string) {
    super(`${why} Nothing was written.`);
  }
}

/** Runs a change once nobody is typing in a cell, and says how it went; never throws. */
export async function carryOut(change: (context: Excel.RequestContext) => Promise<void>): Promise<Outcome> {
  try {
    await Excel.run({ delayForCellEdit: true }, change);
    return { kind: "written" };
  } catch (problem) {
    return { kind: problem instanceof Unsure ? "unsure" : "unchanged", message: failureWords("Nothing was written.", problem) };
  }
}
