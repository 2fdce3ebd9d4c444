import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { licenceProblems, type AllowedScripts } from "../../src/build/licences/check";
import { lockedPackages, type LockedPackage } from "../../src/build/licences/lock";
import { notices } from "../../src/build/licences/notices";
import { root } from "../../src/build/run.mjs";

const packages = lockedPackages();
const { allowScripts, dependencies } = JSON.parse(readFileSync(path.join(root, "package.json"), "utf8")) as {
  allowScripts: AllowedScripts;
  dependencies: Record<string, string>;
};
const made = (part: Partial<LockedPackage>): LockedPackage => ({
  place: "node_modules/made-up",
  name: "made-up",
  version: "1.0.0",
  licence: "MIT",
  toolOnly: false,
  hasInstallScript: false,
  ...part,
});
const problemsWith = (part: Partial<LockedPackage>) => licenceProblems([...packages, made(part)], allowScripts);

describe("the packages' licences", () => {
  it("are all on the list, and every script on installing was decided on", () => {
    expect(packages.length).toBeGreaterThan(300);
    expect(licenceProblems(packages, allowScripts)).toEqual([]);
  });

  it.each([
    ["a licence that binds users", { licence: "GPL-3.0" }, 'the licence "GPL-3.0" is not on the list'],
    ["no licence", { licence: undefined }, 'the licence "none stated" is not on the list'],
    ["a tool's licence in what ships", { licence: "MPL-2.0" }, "is not on the list of those that may ship"],
    ["a script on installing", { hasInstallScript: true }, "read it, then allow or forbid it"],
    ["Microsoft's library among what ships", { name: "@microsoft/office-js" }, "for building and testing only"],
  ])("%s is found", (_, part, words) => {
    expect(problemsWith(part).join("\n")).toContain(words);
  });

  it("a tool may have the licence of a tool", () => {
    expect(problemsWith({ licence: "MPL-2.0", toolOnly: true })).toEqual([]);
  });

  it("a decision about a script that is no longer there is found", () => {
    expect(licenceProblems(packages, { ...allowScripts, gone: false })).toEqual(["allowScripts names gone, which has no such script"]);
  });
});

describe("licences.txt", () => {
  it("holds our licence and the notice of every direct dependency that ships", () => {
    const text = notices();
    expect(text).toContain("Gylebook contributors");
    expect(Object.keys(dependencies).filter((name) => !text.includes(`${name} ${dependencies[name]} (`))).toEqual([]);
    expect(text).toMatch(/Permission is hereby granted[\s\S]*Apache License/);
  });
});
