import { cellKey, type CellPlace } from "./cell-key";

/**
 * The messages that came with errors, by cell, for hovering. A cell's old messages go when it is calculated again,
 * but two functions in one formula each keep theirs: hence the calculation's number.
 */
export class CellErrors {
  private calculation = 0;
  private readonly messages = new Map<string, string>();
  private readonly written = new Map<string, { calculation: number; keys: string[] }>();

  beginCalculation(): void {
    this.calculation++;
  }

  /** Called before a function runs in `origin`: forgets what earlier calculations said there and in its spill. */
  enter(origin: CellPlace): void {
    const key = cellKey(origin);
    const earlier = this.written.get(key);
    if (earlier !== undefined && earlier.calculation !== this.calculation) this.forget(origin);
  }

  /** `row` and `column` count from the origin, for errors inside a spill. */
  keep(origin: CellPlace, row: number, column: number, message: string | undefined): void {
    if (!message) return;
    const originKey = cellKey(origin);
    const place = cellKey({ ...origin, row: origin.row + row, column: origin.column + column });
    const record = this.written.get(originKey) ?? { calculation: this.calculation, keys: [] };
    record.keys.push(place);
    this.written.set(originKey, record);
    this.messages.set(place, message);
  }

  /** For a cell that gets another formula or value: functions of ours that are not in it will not say so. */
  forget(origin: CellPlace): void {
    const key = cellKey(origin);
    for (const old of this.written.get(key)?.keys ?? []) this.messages.delete(old);
    this.written.delete(key);
  }

  messageAt(place: CellPlace): string | undefined {
    return this.messages.get(cellKey(place));
  }

  clear(): void {
    this.messages.clear();
    this.written.clear();
  }
}
