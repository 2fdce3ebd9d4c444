import { execFileSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { trials } from "../../src/build/guide/try-in-excel";
import { indexPage } from "../../src/build/help/index-page";
import { root } from "../../src/build/run.mjs";
import { installPage } from "../../src/build/site/install-page";
import { registry } from "../../src/functions/registry";
import { screens } from "../../src/pane/screens";

const read = (file: string): string => readFileSync(path.join(root, file), "utf8");
const { scripts } = JSON.parse(read("package.json")) as { scripts: Record<string, string> };
const tracked = execFileSync("git", ["ls-files", "-z"], { cwd: root, encoding: "utf8", maxBuffer: 1e8 })
  .split("\0")
  .filter((file) => file !== "");
const topLevel = new Set(tracked.map((file) => file.split("/")[0] ?? ""));

describe.each(["README.md", "DEVELOPERS.md"])("%s", (name) => {
  const page = read(name);

  it("names only scripts that package.json has", () => {
    const named = [...page.matchAll(/(?:^|`)npm (?:run )?([a-z][\w:]*)/gm)]
      .map(([, script = ""]) => script)
      .filter((script) => !["ci", "install"].includes(script));
    expect(named.length).toBeGreaterThan(5);
    expect(named.filter((script) => !(script in scripts))).toEqual([]);
  });

  it("names only files and folders that are there", () => {
    const quoted = [...page.matchAll(/`((?:src|tests|sample-workbooks|\.ci)\/[\w./-]*|[\w-]+\.(?:md|json|xml|js))`|\]\(([^):]+)\)/g)].map(
      ([, code, link]) => code ?? link ?? "",
    );
    // Made by a build, or by whoever has an address.
    const places = quoted.filter((place) => !["functions.js", "functions.json", "taskpane.js"].includes(place));
    expect(places.length).toBeGreaterThan(1);
    expect(places.filter((place) => !existsSync(path.join(root, place)))).toEqual([]);
  });
});

describe("DEVELOPERS.md", () => {
  it("tells what each script does", () => {
    const untold = Object.keys(scripts).filter(
      (script) => !read("DEVELOPERS.md").includes(`\`npm ${["start", "stop", "test"].includes(script) ? "" : "run "}${script}`),
    );
    expect(untold).toEqual([]);
  });
});

describe("the README", () => {
  it("begins with one paragraph on the job, then the two commands, a picture and a first formula", () => {
    const [title, job, heading, commands, , picture, , formula] = read("README.md").split(/\n{2,}/);
    expect(title).toBe("# Gylebook");
    expect(job).toMatch(/^You make beer at home.*[^:]$/s);
    expect(heading).toMatch(/^## /);
    expect(commands).toMatch(/^```sh\nnpm start .*\nnpm test .*\n```$/s);
    expect(picture).toMatch(/^!\[[^\]]{10,}\]\(src\/.*\.png\)$/);
    expect(formula).toMatch(/^```\n=GYLE\.[A-Z.]+\(.*\)\n```$/);
  });
});

describe("where the decimal sign is a comma", () => {
  it.each([
    ["README", () => read("README.md")],
    ["install page", () => installPage("https://club.example/gylebook/")],
    ["list of functions", () => indexPage(registry)],
  ])("the %s says in a line how to type there", (_name, page) => {
    const said = page()
      .split(/\n|<\/(?:p|li)>/)
      .filter((line) => /decimal (comma|sign)/.test(line) && /=GYLE\.BEER\.ABV\(1,0\d+; 1,0\d+\)/.test(line));
    expect(said).toHaveLength(1);
  });
});

describe("the list for somebody with Excel", () => {
  it("takes half an hour, what would hurt most first; the rest comes after it", () => {
    const minutes = trials.map((trial) => trial.minutes ?? 0);
    expect(minutes.reduce((sum, one) => sum + one, 0)).toBe(30);
    expect(minutes.findLastIndex((one) => one > 0)).toBeLessThan(minutes.indexOf(0));
  });

  it("says of each step what should be seen", () => {
    for (const { title, steps, see } of trials) {
      expect(steps.length, title).toBeGreaterThan(0);
      expect(see.split(" ").length, title).toBeGreaterThan(4);
    }
  });

  it("speaks of places of the pane that are there", () => {
    const said = trials.flatMap(({ steps }) => [
      ...steps.join(" ").matchAll(/\b(Plan|Brew|Ferment|Package|Season|Share|Help), ([A-Z][a-z]+(?: [a-z]+)*?)(?=[:,.;]| and )/g),
    ]);
    expect(said.length).toBeGreaterThan(8);
    const there = screens.map(({ place, title }) => `${place}, ${title}`);
    expect(said.map(([words]) => words).filter((words) => !there.includes(words))).toEqual([]);
  });
});

describe("the top of the project", () => {
  it("holds what a newcomer looks for, what tools insist on, and nothing else", () => {
    const ours = [
      "README.md",
      "DEVELOPERS.md",
      "LICENSE",
      "package.json",
      "package-lock.json",
      "tsconfig.json",
      "manifest.xml",
      "src",
      "tests",
      "sample-workbooks",
    ];
    const tools = ["eslint.config.js", "vitest.config.ts", "webpack.config.js"];
    expect([...topLevel].filter((name) => !name.startsWith(".")).sort()).toEqual([...ours, ...tools].sort());
  });
});
