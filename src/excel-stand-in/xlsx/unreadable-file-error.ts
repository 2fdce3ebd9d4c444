/** The file cannot be opened; the message says why in words for the person who picked it. */
export class UnreadableFileError extends Error {
  constructor(reason: string, options?: ErrorOptions) {
    super(`this is not a spreadsheet file we can read: ${reason}`, options);
    this.name = "UnreadableFileError";
  }
}
