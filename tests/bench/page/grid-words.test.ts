import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { gridWords } from "../../../src/bench/page/words/grid-words";
import { root } from "../../../src/build/run.mjs";

/** The grid's published scripts, all parts of it that a page can hold. */
const folder = path.join(root, "node_modules/@univerjs");
const notOnAPage = ["core", "preset-sheets-node-core", "rpc-node"];
const scripts = readdirSync(folder)
  .filter((name) => !notOnAPage.includes(name))
  .flatMap((name) => {
    try {
      return readFileSync(path.join(folder, name, "lib/es/index.js"), "utf8");
    } catch {
      return [];
    }
  });

const words = gridWords as unknown as Record<string, unknown>;
const at = (key: string): unknown =>
  key.split(".").reduce<unknown>((inside, part) => (inside as Record<string, unknown> | undefined)?.[part], words);

/** Texts of the form "part.group.word", and whether each is handed to the grid's translator on the spot. */
function* keysIn(script: string): Generator<{ key: string; translated: boolean }> {
  for (const match of script.matchAll(/(\bt\(\s*)?"([a-z][\w-]*(?:\.[\w-]+)+)"/giu))
    yield { key: match[2]!, translated: match[1] !== undefined };
}

/** Where an alias has no words the grid shows the function's own name; and names of the grid's services look like keys. */
const mayBeMissing = /\.aliasFunctionName$|\.service$/u;

/** A key for the translator, or one beside keys that have words: a label that is translated where it is shown. */
const isAsked = ({ key, translated }: { key: string; translated: boolean }): boolean =>
  translated || (key.split(".").length > 2 && typeof at(key.split(".").slice(0, 2).join(".")) === "object");

describe("the grid's words", () => {
  it("are there for every key that the grid asks for", () => {
    const asked = new Set(scripts.flatMap((script) => [...keysIn(script)].filter(isAsked).map(({ key }) => key)));
    // Some thousand names and arguments of functions, some hundred words of menus; fewer would mean that the walk sees nothing.
    expect(asked.size).toBeGreaterThan(2000);
    expect([...asked].filter((key) => typeof at(key) !== "string" && !mayBeMissing.test(key))).toEqual([]);
  });

  it("are words, not keys", () => {
    expect(at("sheets-formula.progress.calculating")).toBe("Calculating…");
    expect(at("sheets-ui.borderLine.borderBlTr")).toBe("One line up to the right");
  });
});
