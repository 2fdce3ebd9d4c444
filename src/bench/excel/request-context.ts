import { IUndoRedoService } from "@univerjs/core";
import { RichApiError } from "./errors";
import type { Host } from "./host";

interface Request {
  kind: "write" | "read";
  run(): void;
}

/**
 * Collects what is asked of Excel and does it, in order, at `sync`. Reads wait for the calculation of the writes before
 * them. As in Excel a failing request leaves what came before it done, and drops what comes after.
 */
export abstract class RequestQueue {
  private requests: Request[] = [];

  constructor(readonly host: Host) {}

  write(run: () => void): void {
    this.requests.push({ kind: "write", run });
  }

  read(run: () => void): void {
    this.requests.push({ kind: "read", run });
  }

  get isEmpty(): boolean {
    return this.requests.length === 0;
  }

  /** Loading a collection asks for its items' properties: those requests come next, before what the caller queues meanwhile. */
  private runOne(request: Request): Request[] {
    const callers = this.requests;
    this.requests = [];
    try {
      request.run();
      return this.requests;
    } finally {
      this.requests = callers;
    }
  }

  async sync<T>(passThrough?: T): Promise<T> {
    const requests = this.requests;
    this.requests = [];
    this.host.faults.enter();
    if (this.host.cellEditing.active()) {
      throw new RichApiError("InvalidOperationInCellEditMode", "Excel is in cell-editing mode. Please exit the edit mode by pressing ENTER or TAB or selecting another cell, and then try again.");
    }
    await this.host.exclusive(() => this.workOff(requests));
    return passThrough as T;
  }

  private async workOff(requests: Request[]): Promise<void> {
    // One undo takes back everything of one round trip.
    const undoStep = this.host.engine.injector.get(IUndoRedoService).__tempBatchingUndoRedo(this.host.unitId);
    try {
      for (let request = requests.shift(); request; request = requests.shift()) {
        if (request.kind === "read" && this.host.engine.watch.busy) await this.host.engine.calculated();
        requests.unshift(...this.runOne(request));
      }
    } finally {
      undoStep.dispose();
    }
  }
}
