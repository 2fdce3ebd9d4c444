/** Lets tests make a round trip to Excel fail, and counts them. */
export class Faults {
  syncCount = 0;
  private readonly planned = new Map<number, Error>();

  /** The n-th sync from now (1 is the next) fails before anything in it is applied. */
  failAtSync(n: number, error: Error): void {
    this.planned.set(this.syncCount + n, error);
  }

  /** Counts a round trip and throws the failure planned for it. */
  enter(): void {
    this.syncCount++;
    const error = this.planned.get(this.syncCount);
    if (!error) return;
    this.planned.delete(this.syncCount);
    throw error;
  }
}
