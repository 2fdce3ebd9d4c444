/** The worksheet errors a GYLE function may answer with; the strings are those of `CustomFunctions.ErrorCode`. */
export type CellErrorCode = "#VALUE!" | "#N/A" | "#NUM!" | "#DIV/0!" | "#REF!" | "#NAME?" | "#NULL!";

/** An error that stands in one cell of an answer. Host-neutral: `src/addin` turns it into Excel's own error object. */
export class CellError {
  constructor(
    readonly code: CellErrorCode,
    readonly message: string,
  ) {}
}

/** A mistake in what was typed: ends the evaluation of one cell (or of the whole call) with a `CellError`. */
export class ArgumentProblem extends Error {
  constructor(
    readonly code: CellErrorCode,
    message: string,
  ) {
    super(message);
    this.name = "ArgumentProblem";
  }
}
