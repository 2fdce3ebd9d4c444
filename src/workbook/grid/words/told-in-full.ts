/** Something did not go as asked, and the message says in full, for the brewer, what became of the workbook: no words are to be put before it. */
export class ToldInFull extends Error {
  override name = "ToldInFull";
  /** Whether whoever threw it has left the workbook as the message says. Otherwise what was begun is still to be taken back. */
  readonly isSettled: boolean = false;
}

/** Part of something may have been written, or all of it. The message names the place to look at. */
export class Unsure extends ToldInFull {
  override name = "Unsure";
  override readonly isSettled = true;
}
