import path from "node:path";
import ts from "typescript";
import { importsOf } from "./layers";

/**
 * Files that import each other in a circle, types and what is fetched later included: each circle once, with all that is entangled
 * in it. `texts` is every file by its path from the project's folder.
 */
export function importCircles(texts: ReadonlyMap<string, string>): string[][] {
  const imports = new Map([...texts].map(([place, text]) => [place, reached(place, text, texts)]));
  const from = (start: string): Set<string> => {
    const seen = new Set<string>();
    const open = [start];
    for (let place = open.pop(); place !== undefined; place = open.pop())
      for (const next of imports.get(place) ?? [])
        if (!seen.has(next)) {
          seen.add(next);
          open.push(next);
        }
    return seen;
  };
  const reach = new Map([...texts.keys()].map((place) => [place, from(place)]));
  const circles = [...reach].filter(([place, all]) => all.has(place));
  return circles
    .map(([place, all]) => [...all].filter((other) => reach.get(other)?.has(place)).sort())
    .filter((circle, index) => circle[0] === circles[index]?.[0]);
}

function reached(place: string, text: string, texts: ReadonlyMap<string, string>): string[] {
  const source = ts.createSourceFile(place, text, ts.ScriptTarget.Latest, true);
  return importsOf(source).flatMap((target) => {
    const named = path.posix.join(path.posix.dirname(place), target);
    return target.startsWith(".") ? ([named, `${named}.ts`, `${named}.tsx`, `${named}/index.ts`].find((one) => texts.has(one)) ?? []) : [];
  });
}
