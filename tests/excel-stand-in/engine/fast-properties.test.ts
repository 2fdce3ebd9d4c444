import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { describe, expect, it } from "vitest";

const require = createRequire(import.meta.url);
const path = "../../../src/excel-stand-in/engine/fast-properties-loader.cjs";
const published = require.resolve("@univerjs/core").replace(/lib[\\/]cjs[\\/].*$/u, "lib/es/index.js");

/** A fresh copy each time: the loader counts what it found. */
function freshLoader() {
  delete require.cache[require.resolve(path)];
  return require(path) as {
    FILES: RegExp;
    rewrite(source: string, path: string): string;
    complaint(options?: { hyphenation?: boolean }): string | undefined;
  };
}

describe("the rewrite of the grid's published code", () => {
  it("finds the slow helper in the installed version and replaces it", () => {
    const loader = freshLoader();
    expect(published).toMatch(loader.FILES);
    const rewritten = loader.rewrite(readFileSync(published, "utf8"), published);
    expect(rewritten).toMatch(/function _defineProperty\w*\((\w+), (\w+), (\w+)\) \{ \1\[\2\] = \3; return \1; \}/u);
    expect(loader.complaint()).toBeUndefined();
  });

  it("complains when nothing matches any more", () => {
    const loader = freshLoader();
    loader.rewrite("export const nothing = 1;", published);
    expect(loader.complaint()).toContain("_defineProperty");
  });

  it("complains when the drawing engine no longer imports hyphenation", () => {
    const loader = freshLoader();
    const helper = "function _defineProperty(e, r, t) {\n\treturn e;\n}";
    loader.rewrite(helper, "/node_modules/@univerjs/engine-render/lib/es/index.js");
    expect(loader.complaint()).toContain("hyphenation");
    expect(loader.complaint({ hyphenation: false })).not.toContain("hyphenation");
  });

  it("complains of everything in the formula engine that is no longer as it was", () => {
    const loader = freshLoader();
    loader.rewrite("function _defineProperty(e, r, t) {\n\treturn e;\n}", "/node_modules/@univerjs/engine-formula/lib/es/index.js");
    for (const repair of ["table names", "number of formulas kept", "kept under", "changed names"])
      expect(loader.complaint()).toContain(repair);
  });

  it.each([
    ["sheets-ui", "measuring of rows"],
    ["sheets-ui", "formula that was typed"],
    ["sheets-formula-ui", "list of functions"],
    ["sheets-data-validation", "cells with choices"],
    ["engine-render", "rows by their cells"],
    ["sheets-numfmt", "show a number"],
  ])("complains where %s no longer does as it did: %s", (name, words) => {
    const loader = freshLoader();
    loader.rewrite("function _defineProperty(e, r, t) {\n\treturn e;\n}", `/node_modules/@univerjs/${name}/lib/es/index.js`);
    expect(loader.complaint({ hyphenation: false })).toContain(words);
  });
});
