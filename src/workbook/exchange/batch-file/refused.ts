/** A batch file that is not taken in, in words for the brewer: what is wrong and where. Nothing has been written. */
export class BatchFileRefused extends Error {
  constructor(message: string) {
    super(message);
    this.name = "BatchFileRefused";
  }
}
