/** What a failed Excel call throws: an Error with Excel's code, such as "ItemNotFound". */
export class RichApiError extends Error {
  readonly debugInfo: { code: string; message: string; errorLocation?: string };
  readonly traceMessages: string[] = [];

  constructor(
    readonly code: string,
    message: string,
    errorLocation?: string,
  ) {
    super(message);
    this.name = "RichApi.Error";
    this.debugInfo = { code, message, ...(errorLocation === undefined ? {} : { errorLocation }) };
  }
}

export const itemNotFound = (what: string): RichApiError => new RichApiError("ItemNotFound", "The requested resource doesn't exist.", what);

export const invalidArgument = (why: string): RichApiError =>
  new RichApiError("InvalidArgument", `The argument is invalid or missing or has an incorrect format. ${why}`);

export const accessDenied = (why = "the cell is on a protected sheet"): RichApiError =>
  new RichApiError("AccessDenied", `You can't perform the requested operation: ${why}.`);

/** office.js's own sentence, for a member that the person's Excel is too old for. */
export const apiNotFound = (member: string, set: string): RichApiError =>
  new RichApiError(
    "ApiNotFound",
    `The method or property ${member} is part of the ${set} requirement set, which is not available in your version of Excel.`,
    member,
  );

/** Excel's own sentence for reading too early, because that is what a developer will search for. */
export const notLoaded = (property: string): RichApiError =>
  new RichApiError(
    "PropertyNotLoaded",
    `The property '${property}' is not available. Before reading the property's value, ` +
      'call the load method on the containing object and call "context.sync()" on the associated request context.',
  );
