import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import vm from "node:vm";
import { describe, expect, it } from "vitest";
import { root } from "../../src/build/run.mjs";
import withoutWords from "../../src/build/webpack/without-words-loader.mjs";
import { call, type Answer } from "../../src/functions/call";
import { CellError } from "../../src/functions/cell-error";
import type { AnyDescriptor, Example } from "../../src/functions/describe";
import { registry } from "../../src/functions/registry";

/**
 * dist/functions.js is not quite what its sources say: the build takes the descriptions' words out of it. So every
 * function is tried in the file that ships, against the same call from source.
 */
class HostError {
  constructor(
    readonly code: string,
    readonly message: string,
  ) {}
}

type WorksheetFunction = (...typed: unknown[]) => unknown[][];

function shippedFunctions(): Record<string, WorksheetFunction> {
  const file = path.join(root, "dist/functions.js");
  if (!existsSync(file)) throw new Error("no build to check: run `npm run build` first");
  const registered: Record<string, WorksheetFunction> = {};
  vm.runInNewContext(readFileSync(file, "utf8"), {
    CustomFunctions: { associate: (all: object) => Object.assign(registered, all), Error: HostError },
    console,
  });
  return registered;
}

const asExcelSends = (argument: Example["arguments"][number]): unknown =>
  argument === null || Array.isArray(argument) ? argument : [[argument]];
const asExcelGets = (answer: Answer): unknown[][] =>
  answer.map((row) => row.map((cell) => (cell instanceof CellError ? `${cell.code} ${cell.message}` : cell)));
/** Copies the answer out of the other context, where arrays and errors are of another kind. */
const plain = (answer: unknown[][]): unknown[][] =>
  [...answer].map((row) => [...row].map((cell) => (cell instanceof HostError ? `${cell.code} ${cell.message}` : cell)));

describe("the functions script that ships", () => {
  const shipped = shippedFunctions();

  it.each(registry.map((descriptor): [string, AnyDescriptor] => [descriptor.id, descriptor]))(
    "answers %s as the source does",
    (id, descriptor) => {
      expect(descriptor.examples.length).toBeGreaterThan(0);
      for (const example of descriptor.examples) {
        const typed = example.arguments.map(asExcelSends);
        const invocation = { address: "Sheet1!A1" };
        const omitted = Array.from({ length: Object.keys(descriptor.parameters as object).length - typed.length }, () => null);
        expect(plain(shipped[id]!(...typed, ...omitted, invocation))).toEqual(asExcelGets(call(descriptor, typed)));
      }
      // A text where a number belongs, or too few arguments: the messages are part of what ships.
      const wrong = Object.keys(descriptor.parameters as object).map(() => [["no such thing"]]);
      expect(plain(shipped[id]!(...wrong, {}))).toEqual(asExcelGets(call(descriptor, wrong)));
    },
  );

  it("holds none of the words that Excel has from functions.json", () => {
    const script = readFileSync(path.join(root, "dist/functions.js"), "utf8").replace(
      /\\(?:x(..)|u(....))/g,
      (_, two: string, four: string) => String.fromCharCode(parseInt(two ?? four, 16)),
    );
    expect(script).toMatch(/^"use strict";.*°P: wrap it in GYLE.WORT.SG/s);
    // Some share their equation, or stand in constants that only the words used.
    expect(registry.filter(({ equation }) => equation.length > 40 && script.includes(equation)).map(({ id }) => id)).toEqual([]);
    expect(script).not.toMatch(/\btypical:/);
    expect(registry.filter(({ summary }) => script.includes(summary)).map(({ id }) => id)).toEqual([]);
    // Sources that several share are kept by a list that is spread outside of a description.
    const cited = registry.flatMap(({ sources }) => sources.filter(({ where }) => where.length > 20 && script.includes(where)));
    expect(cited.map(({ where }) => where)).toEqual([]);
  });
});

describe("taking the words out of a description", () => {
  it("leaves everything else as it was", () => {
    const source =
      'const a = describeFunction({ id: "A", summary: "s, t", parameters: { summary: 1 }, sources: [{ cite: "c" }], compute: () => 1, cautions: ["x"] });';
    expect(withoutWords(source)).toBe('const a = describeFunction({ id: "A", parameters: { summary: 1 }, compute: () => 1, });');
    expect(withoutWords('const b = { summary: "kept" };')).toBe('const b = { summary: "kept" };');
  });

  it("empties the arguments' explanations, takes their usual figures, and no other text", () => {
    const source =
      'import { choice, list, number, volume } from "../vocabulary";\nconst own = (doc: string, typical: number) => typical;\n' +
      'x(volume("V.", { hint: "h" }), choice("C, d.", ["a"]), list("number", "L."), number("mass", { doc: "M.", typical: 1 }), own("O.", 2), other("kept"), { doc: `T ${1}` });';
    expect(withoutWords(source)).toContain(
      'x(volume("", { hint: "h" }), choice("", ["a"]), list("number", ""), number("mass", { doc: "", }), own("", 2), other("kept"), { doc: "" });',
    );
    expect(withoutWords('const volume = (text: string) => text; volume("kept");')).toContain('volume("kept")');
  });

  it("is refused where the description is not written out in place", () => {
    expect(() => withoutWords("describeFunction(made(1));")).toThrow("written out in place");
    expect(withoutWords("export function describeFunction(d: D) { return d; }")).toBe(
      "export function describeFunction(d: D) { return d; }",
    );
  });
});
