import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { root } from "../../src/build/run.mjs";

const read = (file: string): string => readFileSync(path.join(root, file), "utf8");
const { dependencies, devDependencies } = JSON.parse(read("package.json")) as Record<
  "dependencies" | "devDependencies",
  Record<string, string>
>;

/** Imports, re-exports and `import()`. A type leaves nothing behind in what ships. */
const importing = /(?:^(?:import|export) (?!type\b)(?:[^;"]*? from )?|\bimport\()"([^."][^"]*)"/gm;

/** "zod" of "zod/v4", "@scope/name" of "@scope/name/part". */
const packageOf = (target: string): string =>
  target
    .split("/")
    .slice(0, target.startsWith("@") ? 2 : 1)
    .join("/");

/** The packages that the files of some layers bring with them, in the alphabet's order. */
function packagesIn(...layers: readonly string[]): string[] {
  const files = layers.flatMap((layer) =>
    readdirSync(path.join(root, "src", layer), { recursive: true, encoding: "utf8" }).map((file) => path.join("src", layer, file)),
  );
  const found = files
    .filter((file) => /(?<!\.d)\.tsx?$/.test(file))
    .flatMap((file) => [...read(file).matchAll(importing)].map(([, target = ""]) => packageOf(target)));
  return [...new Set(found)].sort();
}

const addinLayers = ["core", "functions", "workbook", "pane", "addin"];

describe("the packages that ship", () => {
  it("are dependencies, so that licences.txt holds their notices", () => {
    // Univer's parts come with its presets, in the very version of the preset.
    const shipped = packagesIn(...addinLayers, "excel-stand-in", "bench").filter((name) => !name.startsWith("@univerjs/"));
    expect(shipped.length).toBeGreaterThan(8);
    expect(shipped.filter((name) => !(name in dependencies))).toEqual([]);
  });

  it("with the add-in are named in DEVELOPERS.md", () => {
    const sentence = /What ends up in the add-in: ([^.]+)\./.exec(read("DEVELOPERS.md"))?.[1] ?? "";
    const named = Object.keys({ ...dependencies, ...devDependencies }).filter((name) => sentence.split(/[\s,;]+/).includes(name));
    expect(packagesIn(...addinLayers)).toEqual(named.sort());
  });
});

describe("the table of dependencies in DEVELOPERS.md", () => {
  /** "@a/b-core, -table" stands for "@a/b-core" and "@a/b-table". */
  const rows = [...read("DEVELOPERS.md").matchAll(/^\| ([^|]+) \| [^|]+ \| ([^|]+) \|$/gm)].map(([, names = "", why = ""]) => ({
    names: names.split(", "),
    why,
  }));
  const named = rows.flatMap(({ names }) => names.map((name) => (name.startsWith("-") ? (names[0] ?? "").replace(/-core$/, name) : name)));

  it("names every package, with a reason", () => {
    const all = Object.keys({ ...dependencies, ...devDependencies });
    expect(all.filter((name) => !named.includes(name))).toEqual([]);
    expect(rows.filter(({ names, why }) => names.some((name) => all.includes(name)) && why.length < 5)).toEqual([]);
  });

  it("in exact versions, none of them a range", () => {
    expect(Object.entries({ ...dependencies, ...devDependencies }).filter(([, version]) => !/^\d+\.\d+\.\d+$/.test(version))).toEqual([]);
  });
});
