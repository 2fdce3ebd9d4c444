import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { importCircles } from "../src/build/circles";
import { layerProblems } from "../src/build/layers";
import { root } from "../src/build/run.mjs";

describe("the layers of src", () => {
  const files = sourceFiles();

  it("are looked at in whole", () => {
    expect(files.length).toBeGreaterThan(50);
    for (const layer of ["core", "functions", "addin", "build"]) expect(files.some((file) => file.startsWith(`src/${layer}/`))).toBe(true);
  });

  it("import downwards only, and know no page and no clock where they must not", () => {
    expect(files.flatMap((file) => layerProblems(file, readFileSync(path.join(root, file), "utf8")))).toEqual([]);
  });
});

describe("files of src", () => {
  it("import each other in no circle but that of Excel's own objects, where a range leads to its sheet and the sheet to its ranges", () => {
    const texts = new Map(sourceFiles().map((file) => [file, readFileSync(path.join(root, file), "utf8")]));
    const circles = importCircles(texts);
    expect(circles.flat().filter((file) => !file.startsWith("src/excel-stand-in/excel/"))).toEqual([]);
    // Were nothing found where there is a circle, nothing would be found anywhere.
    expect(circles).toHaveLength(1);
    expect(circles[0]).toContain("src/excel-stand-in/excel/range.ts");
  });

  it.each([
    [
      "two that need each other",
      { "src/a.ts": 'import { b } from "./b";', "src/b.ts": 'import type { A } from "./a";' },
      [["src/a.ts", "src/b.ts"]],
    ],
    ["itself", { "src/a.ts": 'export * from "./a";' }, [["src/a.ts"]]],
    [
      "a folder, fetched later, and who only leads there",
      {
        "src/c.ts": 'import "./d";',
        "src/d/index.ts": 'const e = import("../e");',
        "src/e.tsx": 'import { x } from "./d"; import z from "zod";',
      },
      [["src/d/index.ts", "src/e.tsx"]],
    ],
    ["none", { "src/a.ts": 'import "./b"; import "./c";', "src/b.ts": 'import "./c";', "src/c.ts": "" }, []],
  ])("the check finds %s", (_what, texts, circles) => {
    expect(importCircles(new Map(Object.entries(texts)))).toEqual(circles);
  });
});

describe("the check of the layers", () => {
  const refused: [place: string, text: string, complaint: string][] = [
    ["src/core/beer/a.ts", 'import { x } from "../../functions/call";', "core must not import src/functions/call"],
    ["src/core/beer/a.ts", 'import type { X } from "../../functions/call";', "core must not import src/functions/call"],
    ["src/core/beer/a.ts", 'type X = import("../../functions/call").X;', "core must not import src/functions/call"],
    ["src/core/beer/a.ts", 'export * from "../../functions/call";', "core must not import src/functions/call"],
    ["src/core/beer/a.ts", 'import { z } from "zod";', 'core imports nothing from outside, not "zod"'],
    ["src/core/beer/a.ts", 'import fs from "node:fs";', 'core imports nothing from outside, not "node:fs"'],
    ["src/functions/a.ts", 'import { x } from "../workbook";', "functions must not import src/workbook"],
    ["src/functions/a.ts", 'const x = await import("../pane/start");', "functions must not import src/pane/start"],
    ["src/workbook/a.ts", 'import { x } from "../pane/start";', "workbook must not import src/pane/start"],
    ["src/pane/a.tsx", 'import { x } from "../addin/host";', "pane must not import src/addin/host"],
    ["src/addin/a.ts", 'import { x } from "../bench/page/main";', "addin must not import src/bench/page/main"],
    ["src/bench/page/a.ts", 'import { x } from "../../addin/host";', "bench must not import src/addin/host"],
    ["src/bench/page/a.ts", 'import { x } from "../../build/run.mjs";', "bench must not import src/build/run.mjs"],
    ["src/functions/a.ts", 'import { x } from "../../tests/support/x";', "functions must not import tests/support/x"],
    ["src/excel-stand-in/a.ts", 'import { x } from "../workbook/grid/b";', "excel-stand-in must not import src/workbook/grid/b"],
    ["src/pane/a.ts", 'import { x } from "../excel-stand-in/b";', "pane must not import src/excel-stand-in/b"],
    ["src/workbook/grid/a.ts", 'import { x } from "../batch/b";', "grid must not import src/workbook/batch/b"],
    [
      "src/workbook/sheets/season/a.ts",
      'import { x } from "../../brewing/companion/b";',
      "sheets must not import src/workbook/brewing/companion/b",
    ],
    ["src/workbook/sheets/season/a.ts", 'import { x } from "../../attic/b";', "sheets must not import src/workbook/attic/b"],
    ["src/elsewhere/a.ts", "", 'src has no layer "elsewhere"'],
    ["src/workbook/a.ts", "document.title = x;", "workbook must not use document"],
    ["src/workbook/a.ts", "const width = window.innerWidth;", "workbook must not use window"],
    ["src/workbook/a.ts", "let place: HTMLElement;", "workbook must not use HTMLElement"],
    ["src/workbook/a.ts", "const both = { document };", "workbook must not use document"],
    ["src/functions/a.ts", "Excel.run(f);", "functions must not use Excel"],
    ["src/core/a.ts", "const now = Date.now();", "core must not use Date.now"],
    ["src/core/a.ts", "const now = new Date();", "core must not use new Date()"],
    ["src/functions/a.ts", "const x = Math.random();", "functions must not use Math.random"],
  ];
  it.each(refused)("refuses, in %s, %s", (place, text, complaint) => {
    expect(layerProblems(place, text)).toEqual([`${place}: ${complaint}`]);
  });

  const allowed: [place: string, text: string][] = [
    ["src/core/beer/a.ts", 'import { x } from "../wort/b";'],
    ["src/functions/a.ts", 'import { x } from "../core/wort/b";'],
    ["src/workbook/care/check/a.ts", 'import { x } from "../../grid/b"; import { y } from "../explain/c";'],
    ["src/bench/a.ts", 'import { x } from "../excel-stand-in/b";'],
    ["src/bench/a.ts", 'import { x } from "../workbook/b"; import { z } from "zod";'],
    ["src/build/a.ts", 'import { parts } from "../../webpack.config.js"; import { x } from "../bench/b";'],
    ["src/workbook/a.ts", "const place = range.document; const made = { window: 1 }; Excel.run(f);"],
    ["src/workbook/a.ts", "export function at(location: string) { return location.length; }"],
    ["src/core/a.ts", "const day = new Date(2026, 0, 1); const most = Math.max(1, 2);"],
    ["src/pane/a.tsx", "document.title = x;"],
  ];
  it.each(allowed)("allows, in %s, %s", (place, text) => {
    expect(layerProblems(place, text)).toEqual([]);
  });
});

function sourceFiles(): string[] {
  const names = readdirSync(path.join(root, "src"), { recursive: true, encoding: "utf8" });
  return names.filter((name) => /\.tsx?$/.test(name)).map((name) => `src/${name.split(path.sep).join("/")}`);
}
