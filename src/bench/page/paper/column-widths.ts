/**
 * Widths of the columns on paper. Each is scaled alike; one that could not hold its numbers or its longest word then
 * takes what it needs from those that have room, in proportion to the room they have.
 *
 * @param scaled widths after scaling
 * @param needed narrowest widths that cut nothing
 * @param room of the page; columns that need more than that are left as wide as they need, and their words break anywhere
 */
export function columnWidths(scaled: readonly number[], needed: readonly number[], room: number): number[] {
  const widths = scaled.map((width, index) => Math.max(width, needed[index] ?? 0));
  const over = sum(widths) - room;
  if (over <= 0) return widths;
  const spare = widths.map((width, index) => width - (needed[index] ?? 0));
  const share = Math.min(1, over / Math.max(sum(spare), 1e-9));
  const narrowed = widths.map((width, index) => width - spare[index]! * share);
  const still = room / sum(narrowed);
  return still < 1 ? narrowed.map((width) => width * still) : narrowed;
}

const sum = (numbers: readonly number[]): number => numbers.reduce((total, number) => total + number, 0);
