import { IUndoRedoService, type IUndoRedoItem, type Nullable } from "@univerjs/core";
import { RichApiError } from "./errors";
import type { Planned } from "./faults";
import type { Host } from "./host";

interface Request {
  kind: "find" | "write" | "read";
  /** A few of the grid's commands finish later; what such a request asks for in turn, it asks for at once. */
  run(): void | Promise<void>;
}

/**
 * Collects what is asked of Excel and does it, in order, at `sync`. Reads wait for the calculation of the writes before
 * them. As in Excel a failing request leaves what came before it done, and drops what comes after.
 */
export abstract class RequestQueue {
  private requests: Request[] = [];
  /** Set by Excel.run's mergeUndoGroup: all round trips together are one step to take back. */
  mergesUndo = false;
  private undoStep: Nullable<IUndoRedoItem>;

  constructor(readonly host: Host) {}

  /**
   * For members that Excel on Windows and Mac cannot undo: the person's undo history ends there, with them
   * (learn.microsoft.com, "Undo support with the Excel JavaScript API", unsupported APIs).
   */
  forGood<T>(member: string, change: () => T): T {
    if (this.mergesUndo) throw new RichApiError("UndoNotSupported", "Undo is not supported for an operation of this group.", member);
    const done = change();
    this.host.engine.injector.get(IUndoRedoService).clearUndoRedo(this.host.unitId);
    return done;
  }

  /** Looks for what a stand-in stands for, and changes nothing. */
  find(run: () => void): void {
    this.requests.push({ kind: "find", run });
  }

  write(run: Request["run"]): void {
    this.requests.push({ kind: "write", run });
  }

  read(run: () => void): void {
    this.requests.push({ kind: "read", run });
  }

  get isEmpty(): boolean {
    return this.requests.length === 0;
  }

  /** Loading a collection asks for its items' properties: those requests come next, before what the caller queues meanwhile. */
  private runOne(request: Request): { followUps: Request[]; finished: void | Promise<void> } {
    const callers = this.requests;
    this.requests = [];
    try {
      const finished = request.run();
      return { followUps: this.requests, finished };
    } finally {
      this.requests = callers;
    }
  }

  async sync<T>(passThrough?: T): Promise<T> {
    const requests = this.requests;
    this.requests = [];
    const planned = this.host.faults.enter();
    if (this.host.cellEditing.active()) {
      throw new RichApiError(
        "InvalidOperationInCellEditMode",
        "Excel is in cell-editing mode. Please exit the edit mode by pressing ENTER or TAB or selecting another cell, and then try again.",
      );
    }
    await this.host.exclusive(() => this.workOff(planned ? underFault(requests, planned) : requests));
    if (planned) throw planned.error;
    return passThrough as T;
  }

  private async workOff(requests: Request[]): Promise<void> {
    // One undo takes back everything of one round trip, or of all those that are merged, if nobody did anything between them.
    const undo = this.host.engine.injector.get(IUndoRedoService);
    const undoStep = undo.__tempBatchingUndoRedo(this.host.unitId);
    if (this.mergesUndo && this.undoStep && undo.pitchTopUndoElement() === this.undoStep) goOn(undo, this.host.unitId);
    try {
      for (let request = requests.shift(); request; request = requests.shift()) {
        if (request.kind === "read" && this.host.engine.watch.busy) await this.host.engine.calculated();
        const { followUps, finished } = this.runOne(request);
        requests.unshift(...followUps);
        await finished;
      }
    } finally {
      undoStep.dispose();
      this.undoStep = undo.pitchTopUndoElement();
    }
  }
}

/** What is still done of a round trip that fails. */
function underFault(requests: readonly Request[], { fault, share }: Planned): Request[] {
  // What an answer that is lost would have told, nobody comes to know.
  if (fault === "answer lost") return requests.filter(({ kind }) => kind !== "read");
  let writes = Math.floor(requests.filter(({ kind }) => kind === "write").length * share);
  const end = requests.findIndex(({ kind }) => kind === "write" && writes-- === 0);
  return requests.slice(0, end === -1 ? requests.length : end);
}

/** The grid's batch of undo steps begins with a new one unless it is told that it has begun. */
const goOn = (undo: IUndoRedoService, unitId: string): unknown =>
  (undo as unknown as { _batchingStatus: Map<string, number> })._batchingStatus.set(unitId, 1);
