import { Context } from "./context";
import { enums } from "./enums";
import type { Host } from "./host";

/** Excel.run's first argument when it is not the callback. */
interface RunOptions {
  delayForCellEdit?: boolean;
}
type Batch<T> = (context: Context) => Promise<T>;

export interface ExcelGlobal {
  run<T>(batch: Batch<T>): Promise<T>;
  run<T>(options: RunOptions, batch: Batch<T>): Promise<T>;
  RequestContext: new () => Context;
}

/** The global `Excel` as the pane's scripts see it. */
export function createExcel(host: Host): ExcelGlobal & typeof enums {
  async function run<T>(first: Batch<T> | RunOptions, second?: Batch<T>): Promise<T> {
    const [options, batch] = typeof first === "function" ? [{}, first] : [first, second!];
    if (options.delayForCellEdit && host.cellEditing.active()) await host.cellEditing.ended();
    const context = new Context(host);
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
  return { ...enums, run, RequestContext };
}
