import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { obtainable } from "../../src/build/debian-packages.mjs";
import { nodeProblem } from "../../src/build/install.mjs";
import { npmCache, root } from "../../src/build/run.mjs";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(path.join(os.tmpdir(), "gylebook-install-"));
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

describe("the Node that runs us", () => {
  it("is held against what package.json asks for", () => {
    writeFileSync(path.join(folder, "package.json"), '{ "engines": { "node": ">=20.19" } }');
    expect(nodeProblem(folder, "18.20.4")).toBe("This is Node 18.20.4: Gylebook needs 20.19 or newer.");
    expect(nodeProblem(folder, "20.9.0")).toBe("This is Node 20.9.0: Gylebook needs 20.19 or newer.");
    expect(nodeProblem(folder, "20.19.0")).toBeUndefined();
    expect(nodeProblem(folder, "22.1.0")).toBeUndefined();
  });

  it("is the one that the README asks for", () => {
    const { engines } = JSON.parse(readFileSync(path.join(root, "package.json"), "utf8")) as { engines: { node: string } };
    expect(readFileSync(path.join(root, "README.md"), "utf8")).toContain(`Node ${engines.node.replace(">=", "")} or newer`);
  });
});

describe("where npm keeps what it fetched", () => {
  it("is left to npm where it can write there", () => {
    expect(npmCache({ npm_config_cache: path.join(folder, "new", "cache") })).toBeUndefined();
    expect(npmCache({}, folder)).toBeUndefined();
    expect(readdirSync(folder)).toContain(".npm");
  });

  it("is below the project where the home folder cannot be written", () => {
    writeFileSync(path.join(folder, "no-folder"), "");
    const ours = path.join(root, ".cache/npm");
    expect(npmCache({ npm_config_cache: path.join(folder, "no-folder", "cache") })).toBe(ours);
    expect(npmCache({}, path.join(folder, "no-folder"))).toBe(ours);
  });
});

describe("packages of Debian", () => {
  /** As apt does it: all of the list, or nothing. */
  const has =
    (...known: string[]) =>
    (packages: readonly string[]) =>
      packages.every((name) => known.includes(name));

  it("are asked for in one go where all can be had", () => {
    const asked: (readonly string[])[] = [];
    const all = ["chromium", "units"];
    expect(obtainable(all, (packages) => asked.push(packages) > 0)).toEqual(all);
    expect(asked).toEqual([all]);
  });

  it("are installed without those that this Debian does not have", () => {
    expect(obtainable(["chromium", "units", "python3-iapws"], has("chromium", "units"))).toEqual(["chromium", "units"]);
    expect(obtainable(["units"], has())).toEqual([]);
  });
});
