/**
 * Stands in for vitest's `describe` and `it` where tests are run once for each mutant: it keeps the tests instead of
 * running them. `expect` is vitest's own.
 */
type Body = (...given: unknown[]) => unknown;
export interface Kept {
  readonly name: string;
  readonly body: () => unknown;
}
const keeper = globalThis as { keptTests?: Kept[] } & typeof globalThis;
const path: string[] = [];

const keep = (name: string, body: Body, given: readonly unknown[]): void => {
  keeper.keptTests?.push({ name: [...path, name].join(" > "), body: () => body(...given) });
};
const each =
  (run: (name: string, body: Body, given: readonly unknown[]) => void) =>
  (rows: readonly unknown[]) =>
  (name: string, body: Body): void => {
    rows.forEach((row, index) => run(`${name} [${index}]`, body, Array.isArray(row) ? row : [row]));
  };
function group(name: string, body: Body, given: readonly unknown[] = []): void {
  path.push(name);
  body(...given);
  path.pop();
}
export const describe = Object.assign((name: string, body: Body) => group(name, body), { each: each(group) });
export const it = Object.assign((name: string, body: Body) => keep(name, body, []), { each: each(keep) });
export const test = it;
export const expect = (globalThis as unknown as { expect: unknown }).expect;
const unused = (): never => {
  throw new Error("tests that need a host do not judge mutants");
};
export const [beforeAll, afterAll, beforeEach, afterEach] = [unused, unused, unused, unused];
