/**
 * How a round trip fails: before anything in it is applied; after a part of it was applied; after all of it was applied, only
 * the answer never comes; or together with the host, which then never answers again.
 */
export type Fault = "refused before" | "refused within" | "answer lost" | "host gone";

export interface Planned {
  readonly fault: Fault;
  readonly error: Error;
  /** Of a round trip that is refused within: which share of its changes is made, 0 to 1. */
  readonly share: number;
}

/** Lets tests make a round trip to Excel fail, and counts them. */
export class Faults {
  syncCount = 0;
  private planned = new Map<number, Planned>();
  private gone: Error | undefined;

  /** The n-th sync from now (1 is the next) fails. */
  failAtSync(n: number, error: Error, fault: Fault = "refused before", share = 0.5): void {
    this.planned.set(this.syncCount + n, { fault, error, share });
  }

  /** Forgets what is planned, and brings a host back that was gone. */
  clear(): void {
    this.planned = new Map();
    this.gone = undefined;
  }

  /** Counts a round trip, and throws where nothing of it is to be applied. */
  enter(): Planned | undefined {
    this.syncCount++;
    if (this.gone) throw this.gone;
    const planned = this.planned.get(this.syncCount);
    this.planned.delete(this.syncCount);
    if (planned?.fault === "host gone") this.gone = planned.error;
    if (planned?.fault === "refused before" || planned?.fault === "host gone") throw planned.error;
    return planned;
  }
}
