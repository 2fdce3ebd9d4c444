import { gyleCalls, type GyleCall } from "./gyle-calls";

/**
 * A formula with its GYLE calls exchanged, the inner ones first. `replacement` gets a call and its arguments' texts, in
 * which calls have been exchanged already, and says what shall stand in its place; `undefined` leaves the call standing.
 * What is outside the calls keeps every character.
 */
export function replaceCalls(
  formula: string,
  replacement: (call: GyleCall, argumentTexts: readonly string[]) => string | undefined,
): string {
  const rebuild = (from: number, to: number, calls: readonly GyleCall[]): string => {
    let at = from;
    let text = "";
    for (const call of calls) {
      if (call.start < from || call.end > to) continue;
      const argumentTexts = call.arguments.map(({ start, end }) => rebuild(start, end, call.inner));
      text += formula.slice(at, call.start) + (replacement(call, argumentTexts) ?? rebuild(call.start, call.end, call.inner));
      at = call.end;
    }
    return text + formula.slice(at, to);
  };
  return rebuild(0, formula.length, gyleCalls(formula));
}
