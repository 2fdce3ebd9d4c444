import { execFileSync } from "node:child_process";
import { readFileSync, statSync } from "node:fs";
import path from "node:path";
import ts from "typescript";
import { describe, expect, it } from "vitest";
import { root } from "../src/build/run.mjs";
import { retiredWords, tradeWords, type TradeWord } from "../src/functions/trade-words";

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

  it("nor do the messages of its newest commits, which anybody with a clone can read; older ones stay as they are", () => {
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

/** What a source file says to somebody: its texts, not its names and comments, nor what it imports. */
function spokenIn(file: string): string[] {
  const text = readFileSync(path.join(root, file), "utf8");
  if (!/\.tsx?$/.test(file)) return text.split("\n");
  const spoken: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node) || ts.isLiteralTypeNode(node)) return;
    if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) return;
    if (ts.isStringLiteralLike(node) || ts.isTemplateHead(node) || ts.isTemplateMiddle(node) || ts.isTemplateTail(node))
      spoken.push(node.text);
    else if (ts.isJsxText(node)) spoken.push(node.text.replace(/\s+/g, " "));
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true, file.endsWith("x") ? ts.ScriptKind.TSX : ts.ScriptKind.TS));
  return spoken;
}

/** Texts with no gap are the machine's: ids, keys, addresses. */
const isForPeople = (text: string): boolean => /\S\s+\S/.test(text.trim()) || /^[A-Z]/.test(text.trim());

describe("the words of the trade", () => {
  const retired = [
    ...retiredWords.map(({ pattern, now }) => ({ pattern, now })),
    ...Object.values<TradeWord>(tradeWords).flatMap(({ term, insteadOf = [] }) => insteadOf.map((pattern) => ({ pattern, now: term }))),
  ];
  const spoken = files
    .filter((file) => /^(src\/(functions|workbook|pane|bench|build\/(guide|help|site))\/.*\.(tsx?|html|md)|README\.md)$/.test(file))
    .filter((file) => !/trade-words|former-marks/.test(file))
    .flatMap((file) =>
      spokenIn(file)
        .filter(isForPeople)
        .map((text) => ({ file, text })),
    );

  it("stand in every text; what they replaced does not come back", () => {
    expect(spoken.length).toBeGreaterThan(3000);
    const found = retired.flatMap(({ pattern, now }) =>
      spoken.filter(({ text }) => pattern.test(text)).map(({ file, text }) => `${file}: “${text.trim().slice(0, 90)}” – say ${now}`),
    );
    expect(found).toEqual([]);
  });

  it("are explained in one short sentence each, in British spelling", () => {
    for (const { term, means } of Object.values<TradeWord>(tradeWords)) {
      expect(means, term).toMatch(/^[A-Z].*\.$/s);
      expect(means.length, term).toBeLessThan(140);
      expect(
        retired.filter(({ pattern }) => pattern.test(means)),
        term,
      ).toEqual([]);
    }
    // Titles of papers are as their authors wrote them, and who looks for a function may spell as he likes.
    const american = /\b(colors?|flavors?|liters?|fibers?|gray|aluminum|sanitiz|carboniz|fertiliz)/i;
    const elsewhere = /search-words|theme/;
    const found = spoken.filter(
      ({ text, file }) => american.test(text.replace(/literal/gi, "")) && !elsewhere.test(file) && !/\b(19|20)\d\d\b/.test(text),
    );
    expect(found.map(({ file, text }) => `${file}: ${text.slice(0, 80)}`)).toEqual([]);
  });
});
