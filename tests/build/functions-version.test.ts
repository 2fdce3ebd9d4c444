import { cpSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { hashOf, nextVersion, packageVersion, raiseVersion, recorded, type RecordedVersions } from "../../src/build/functions-version";
import { root } from "../../src/build/run.mjs";
import { functionsJson } from "../../src/functions/metadata";
import { registry } from "../../src/functions/registry";

const read = (file: string) => readFileSync(path.join(root, file), "utf8");
const now = `${JSON.stringify(functionsJson(registry), null, 2)}\n`;
const versions = JSON.parse(read("tests/functions/versions.json")) as RecordedVersions;

describe("the version", () => {
  it("stands for this functions.json and no other, in the package, the lock file and the manifest", () => {
    const version = packageVersion();
    expect(versions[version]).toBe(hashOf(now));
    expect(read("manifest.xml")).toContain(`<Version>${version}.0</Version>`);
    const lock = JSON.parse(read("package-lock.json")) as { version: string; packages: Record<string, { version: string }> };
    expect([lock.version, lock.packages[""]?.version]).toEqual([version, version]);
  });

  it("must rise when functions.json changed", () => {
    const changed = now.replace("Alcohol by volume", "Alcohol by mass");
    expect(changed).not.toBe(now);
    expect(recorded(versions, packageVersion(), changed)).toEqual({ problem: expect.stringContaining("--raise") as string });
    expect(recorded(versions, nextVersion(packageVersion()), changed)).toEqual({
      versions: { ...versions, [nextVersion(packageVersion())]: hashOf(changed) },
    });
  });

  it("may stay when it did not", () => {
    expect(recorded(versions, packageVersion(), now)).toEqual({ versions });
  });
});

describe("raising it", () => {
  let folder: string;
  beforeAll(() => {
    folder = mkdtempSync(path.join(os.tmpdir(), "gylebook-version-"));
    for (const file of ["package.json", "package-lock.json", "manifest.xml"]) cpSync(path.join(root, file), path.join(folder, file));
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it("changes the version everywhere, and nothing else", () => {
    const before = packageVersion();
    const after = nextVersion(before);
    expect(nextVersion("0.1.9")).toBe("0.1.10");
    expect(raiseVersion(before, folder)).toBe(after);
    for (const [file, places] of [
      ["package.json", 1],
      ["package-lock.json", 2],
      ["manifest.xml", 1],
    ] as const) {
      const lines = readFileSync(path.join(folder, file), "utf8").split("\n");
      const old = read(file).split("\n");
      const changed = lines.flatMap((line, index) => (line === old[index] ? [] : [line]));
      expect(changed).toHaveLength(places);
      for (const line of changed) expect(line).toContain(after);
    }
  });
});
