import { readFileSync } from "node:fs";
import path from "node:path";
import { root } from "../run.mjs";

export type WorksheetFunction = (...typed: unknown[]) => unknown[][];

export const built = (file: string): string => readFileSync(path.join(root, "dist", file), "utf8");

/** The worksheet functions of dist/functions.js, as a host would have them registered. */
export function shippedFunctions(): Record<string, WorksheetFunction> {
  const registered: Record<string, WorksheetFunction> = {};
  const CustomFunctions = { associate: (all: object) => Object.assign(registered, all), Error };
  // Our own build output: a classic script that knows only this one global.
  // eslint-disable-next-line no-new-func, @typescript-eslint/no-implied-eval -- as a page would run it
  new Function("CustomFunctions", "self", built("functions.js"))(CustomFunctions, { CustomFunctions });
  return registered;
}
