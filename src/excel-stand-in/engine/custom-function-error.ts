/** `CustomFunctions.ErrorCode` with Excel's values. */
export const ErrorCode = {
  invalidValue: "#VALUE!",
  notAvailable: "#N/A",
  divisionByZero: "#DIV/0!",
  invalidNumber: "#NUM!",
  nullReference: "#NULL!",
  invalidName: "#NAME?",
  invalidReference: "#REF!",
} as const;

export type ErrorCodeValue = (typeof ErrorCode)[keyof typeof ErrorCode];

/** `CustomFunctions.Error`: thrown by a function, put into a cell of its result, or received in its input. */
export class CustomFunctionError extends Error {
  readonly code: ErrorCodeValue;

  constructor(code: ErrorCodeValue, message?: string) {
    super(message);
    this.code = code;
  }
}
