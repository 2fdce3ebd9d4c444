import { execFileSync } from "node:child_process";
import { readFileSync, statSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { root } from "../src/build/run.mjs";

/**
 * Gylebook rests on textbooks, papers, standards and common practice, and cites them. Nothing in it refers to any
 * other text as its origin. The words are put together from pieces, so that this file does not hold them itself.
 */
const forbidden = [
  ["tran", "script"],
  ["se", "ed docu", "ment"],
  ["se", "ed te", "xt"],
  ["se", "ed vid", "eo"],
  ["you", "tube"],
].map((pieces) => pieces.join(""));

const pattern = new RegExp(forbidden.map((words) => words.replace(" ", "[\\s_-]*")).join("|"), "i");

/** Also what is not committed yet, so that a slip is found before it is. */
const files = execFileSync("git", ["ls-files", "--cached", "--others", "--exclude-standard", "-z"], {
  cwd: root,
  encoding: "utf8",
  maxBuffer: 1e8,
})
  .split("\0")
  .filter((file) => file !== "" && statSync(path.join(root, file), { throwIfNoEntry: false })?.isFile() === true);

const isText = (bytes: Buffer): boolean => !bytes.subarray(0, 8000).includes(0);

describe("the words of this project", () => {
  it("are read in all of its text files", () => {
    expect(files).toContain("README.md");
    expect(files).toContain("tests/words.test.ts");
    expect(files.length).toBeGreaterThan(50);
  });

  it("refer to no other text as their origin", () => {
    const found = files.filter((file) => {
      const bytes = readFileSync(path.join(root, file));
      return pattern.test(file) || (isText(bytes) && pattern.test(bytes.toString("utf8")));
    });
    expect(found).toEqual([]);
  });

  it("nor do the messages of its newest commits, which anybody with a clone can read; older ones nobody can mend", () => {
    const messages = execFileSync("git", ["log", "-100", "--format=%B"], { cwd: root, encoding: "utf8", maxBuffer: 1e8 });
    expect(messages.length).toBeGreaterThan(20);
    expect(messages.split("\n").filter((line) => pattern.test(line) || /(?<!office-js )\bissues? ?#?\d/i.test(line))).toEqual([]);
  });

  it("would be found in any case and across a line or a hyphen", () => {
    for (const words of forbidden) {
      expect(`see the ${words.toUpperCase()}s`).toMatch(pattern);
      expect(words.replace(" ", "\n")).toMatch(pattern);
      expect(words.replace(" ", "-")).toMatch(pattern);
    }
    expect("a pinch of seed crystals, a text, a script").not.toMatch(pattern);
  });
});
