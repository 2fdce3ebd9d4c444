import { chmodSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { findChromium, findOnPath, findSoffice } from "../../src/build/find-programs.mjs";
import { needsInstall } from "../../src/build/install.mjs";
import { wantsBrowser } from "../../src/build/open-browser.mjs";
import { root } from "../../src/build/run.mjs";
import { isStale } from "../../src/build/stale.mjs";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(path.join(os.tmpdir(), "gylebook-scripts-"));
});
afterEach(() => {
  vi.unstubAllEnvs();
  rmSync(folder, { recursive: true, force: true });
});

/** Writes a file whose time of change is so many seconds after a fixed moment. */
function file(place: string, seconds: number): string {
  const name = path.join(folder, place);
  mkdirSync(path.dirname(name), { recursive: true });
  writeFileSync(name, "");
  utimesSync(name, 1_700_000_000 + seconds, 1_700_000_000 + seconds);
  return name;
}

const folderTime = (place: string, seconds: number): void =>
  utimesSync(path.join(folder, place), 1_700_000_000 + seconds, 1_700_000_000 + seconds);

describe("whether to install", () => {
  it("is yes without node_modules", () => {
    file("package-lock.json", 0);
    expect(needsInstall(folder)).toBe(true);
  });

  it("is yes when the lock file is newer than the install, no when it is older", () => {
    file("node_modules/.package-lock.json", 10);
    file("package-lock.json", 20);
    expect(needsInstall(folder)).toBe(true);
    file("package-lock.json", 0);
    expect(needsInstall(folder)).toBe(false);
  });
});

describe("whether to install again after a checkout, which makes the lock file new", () => {
  const one = { version: "1.0.0", integrity: "sha512-one" };
  const elsewhere = { version: "2.0.0", integrity: "sha512-two", optional: true };
  const asked = (wanted: object, installed: object): boolean => {
    writeFileSync(file("node_modules/.package-lock.json", 10), JSON.stringify({ packages: installed }));
    writeFileSync(file("package-lock.json", 20), JSON.stringify({ packages: { "": { name: "us" }, ...wanted } }));
    utimesSync(path.join(folder, "node_modules/.package-lock.json"), 1_700_000_000, 1_700_000_000);
    return needsInstall(folder);
  };

  it("is no while the same packages stand in it, with or without those for other systems", () => {
    expect(asked({ "node_modules/one": one, "node_modules/elsewhere": elsewhere }, { "node_modules/one": one })).toBe(false);
    expect(
      asked(
        { "node_modules/one": one, "node_modules/elsewhere": elsewhere },
        { "node_modules/one": one, "node_modules/elsewhere": elsewhere },
      ),
    ).toBe(false);
  });

  it.each([
    ["another version", { "node_modules/one": { ...one, version: "1.0.1" } }],
    ["other content", { "node_modules/one": { ...one, integrity: "sha512-other" } }],
    ["one more", { "node_modules/one": one, "node_modules/two": one }],
    ["one less", {}],
  ])("is yes for %s", (_, wanted) => {
    expect(asked(wanted, { "node_modules/one": one })).toBe(true);
  });
});

describe("whether to build", () => {
  it("is yes before the first build", () => {
    file("src/a.ts", 0);
    expect(isStale(folder)).toBe(true);
  });

  it("is no after a build, and yes once a source, the package or a folder has changed", () => {
    file("src/core/a.ts", 0);
    file("package.json", 0);
    file("dist/.built", 10);
    for (const place of ["src/core", "src"]) folderTime(place, 0);
    expect(isStale(folder)).toBe(false);
    file("src/core/a.ts", 20);
    expect(isStale(folder)).toBe(true);
    file("src/core/a.ts", 0);
    file("package.json", 20);
    expect(isStale(folder)).toBe(true);
    file("package.json", 0);
    folderTime("src/core", 20); // as when a file in it was deleted
    expect(isStale(folder)).toBe(true);
  });
});

describe("whether to open a browser", () => {
  it("needs a display on Linux", () => {
    expect(wantsBrowser([], {}, "linux")).toBe(false);
    expect(wantsBrowser([], { DISPLAY: ":0" }, "linux")).toBe(true);
    expect(wantsBrowser([], { WAYLAND_DISPLAY: "wayland-0" }, "linux")).toBe(true);
    expect(wantsBrowser([], {}, "darwin")).toBe(true);
    expect(wantsBrowser([], {}, "win32")).toBe(true);
  });

  it("is no when told so, or when nobody is watching", () => {
    expect(wantsBrowser(["--no-open"], { DISPLAY: ":0" }, "linux")).toBe(false);
    expect(wantsBrowser([], { DISPLAY: ":0", BROWSER: "none" }, "linux")).toBe(false);
    expect(wantsBrowser([], { DISPLAY: ":0", CI: "true" }, "linux")).toBe(false);
  });
});

describe("finding programs", () => {
  const program = (name: string): string => {
    const place = file(process.platform === "win32" ? `${name}.exe` : name, 0);
    chmodSync(place, 0o755);
    return place;
  };

  it("takes what the environment names, by path or by name, and nothing else", () => {
    const own = program("my-browser");
    vi.stubEnv("GYLEBOOK_CHROMIUM", own);
    expect(findChromium()).toBe(own);
    vi.stubEnv("PATH", folder);
    vi.stubEnv("GYLEBOOK_CHROMIUM", "my-browser");
    expect(findChromium()).toBe(own);
    vi.stubEnv("GYLEBOOK_SOFFICE", path.join(folder, "not-there"));
    expect(findSoffice()).toBeUndefined();
  });

  it("looks along the PATH in order", () => {
    vi.stubEnv("GYLEBOOK_CHROMIUM", "");
    vi.stubEnv("PATH", ["", path.join(folder, "empty"), folder].join(path.delimiter));
    expect(findOnPath("chromium")).toBeUndefined();
    const chrome = program("google-chrome");
    expect(findChromium()).toBe(chrome);
    const chromium = program("chromium");
    expect(findChromium()).toBe(chromium);
  });
});

describe("the scripts that run before any install", () => {
  it("import nothing at their top but Node and each other", () => {
    const names = readdirSync(path.join(root, "src/build")).filter((name) => name.endsWith(".mjs"));
    expect(names).toContain("start.mjs");
    expect(names).toContain("test.mjs");
    for (const name of names) {
      const imports = [...readFileSync(path.join(root, "src/build", name), "utf8").matchAll(/^import [^;]*? from "([^"]+)";/gms)].map(
        ([, from]) => from ?? "",
      );
      for (const from of imports) expect(from, name).toMatch(/^node:|^\.\/[\w-]+\.mjs$/);
    }
  });
});
