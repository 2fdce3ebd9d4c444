import { Context } from "./context";
import { enums } from "./enums";
import { invalidArgument } from "./errors";
import type { Host } from "./host";

/** Excel.run's first argument when it is not the callback. */
type RunOptions = Pick<Excel.RunOptions, "delayForCellEdit" | "mergeUndoGroup">;
interface HasContext {
  context: Context;
}
type Batch<T> = (context: Context) => Promise<T>;

export interface ExcelGlobal {
  run<T>(batch: Batch<T>): Promise<T>;
  run<T>(options: RunOptions, batch: Batch<T>): Promise<T>;
  /** Goes on with the context of an object made before, such as the result of adding an event handler. */
  run<T>(previous: HasContext, batch: Batch<T>): Promise<T>;
  /** Opens a new workbook in another window: an empty one, or the .xlsx of which these are the bytes. */
  createWorkbook(base64?: string): Promise<void>;
  RequestContext: new () => Context;
}

/** The global `Excel` as the pane's scripts see it. */
export function createExcel(host: Host): ExcelGlobal & typeof enums {
  async function run<T>(first: Batch<T> | RunOptions | HasContext, second?: Batch<T>): Promise<T> {
    const [options, batch] = typeof first === "function" ? [{}, first] : [first, second!];
    if ("delayForCellEdit" in options && options.delayForCellEdit && host.cellEditing.active()) await host.cellEditing.ended();
    const context = "context" in options ? options.context : new Context(host);
    if ("mergeUndoGroup" in options) context.mergesUndo = options.mergeUndoGroup === true;
    const result = await batch(context);
    // As in Excel, what was queued last is done without asking; an empty queue costs no round trip.
    if (!context.isEmpty) await context.sync();
    return result;
  }
  class RequestContext extends Context {
    constructor() {
      super(host);
    }
  }
  const createWorkbook = async (base64?: string): Promise<void> =>
    host.files.openAnother(base64 === undefined ? undefined : bytesOf(base64));
  return { ...enums, run, createWorkbook, RequestContext };
}

function bytesOf(base64: string): Uint8Array {
  try {
    return Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
  } catch {
    throw invalidArgument("The text is not base64.");
  }
}
