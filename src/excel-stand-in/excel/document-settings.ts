import type { Host } from "./host";

interface Succeeded<T> {
  status: "succeeded";
  value?: T;
}
type Callback<T = undefined> = (result: Succeeded<T>) => void;

/** Calls back later, as Office does; options may stand before the callback. */
export function answer<T>(first: Callback<T> | object | undefined, second: Callback<T> | undefined, value?: T): void {
  const callback = typeof first === "function" ? (first as Callback<T>) : second;
  queueMicrotask(() => callback?.({ status: "succeeded", ...(value === undefined ? {} : { value }) }));
}

/**
 * Stands in for Office.Settings: each pane has a copy in memory, read when it starts; `saveAsync` puts it into the
 * workbook and `refreshAsync` reads it again. What another pane saved meanwhile is overwritten, as in Office.
 */
export class DocumentSettings {
  private copy: { unitId: string; values: Record<string, unknown> } | undefined;

  constructor(private readonly host: Host) {}

  get(name: string): unknown {
    return this.values[name] ?? null;
  }
  set(name: string, value: unknown): void {
    this.values[name] = structuredClone(value);
  }

  saveAsync(first?: Callback | object, second?: Callback): void {
    this.host.extras.of(this.host.unitId).settings = structuredClone(this.values);
    answer(first, second);
  }

  refreshAsync(first?: Callback | object, second?: Callback): void {
    this.copy = undefined;
    answer(first, second);
  }

  private get values(): Record<string, unknown> {
    const { unitId } = this.host;
    if (this.copy?.unitId !== unitId) this.copy = { unitId, values: structuredClone(this.host.extras.of(unitId).settings ?? {}) };
    return this.copy.values;
  }
}
