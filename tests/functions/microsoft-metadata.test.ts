import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { generateCustomFunctionsMetadata } from "custom-functions-metadata";
import { describe, expect, it } from "vitest";
import { argumentName, type AnyDescriptor, type Parameter } from "../../src/functions/describe";
import { functionsJson } from "../../src/functions/metadata";
import { parameterText } from "../../src/functions/parameter-text";
import { registry } from "../../src/functions/registry";

/**
 * Microsoft's own generator reads functions with comments in a form of its own and writes functions.json. Given a stub
 * for each of our functions it must come to what we write ourselves.
 */
const base = "https://example.org/gylebook/";

/** An argument's name in TypeScript, where one word of ours is reserved. */
const jsName = (name: string): string => (name === "function" ? "function_" : name);

/** One function as Microsoft would have it written: every argument a matrix of anything. */
function stubOf(descriptor: AnyDescriptor, helpUrl: string): string {
  const parameters = Object.entries(descriptor.parameters as Record<string, Parameter>).map(([key, parameter]) => ({
    name: jsName(argumentName(key)),
    parameter,
  }));
  const lines = [
    descriptor.summary,
    `@customfunction ${descriptor.id} ${descriptor.id}`,
    `@helpurl ${helpUrl}`,
    ...parameters.map(({ name, parameter }) => `@param ${parameter.optional === true ? `[${name}]` : name} ${parameterText(parameter)}`),
    "@returns the answer",
  ];
  const list = parameters.map(({ name, parameter }) => `${name}${parameter.optional === true ? "?" : ""}: any[][]`).join(", ");
  return `/**\n${lines.map((line) => ` * ${line}`).join("\n")}\n */\nfunction ${descriptor.id.toLowerCase().replaceAll(".", "_")}(${list}): any[][] { return []; }\n`;
}

async function generated(source: string) {
  const folder = mkdtempSync(path.join(os.tmpdir(), "gylebook-metadata-"));
  try {
    const file = path.join(folder, "functions.ts");
    writeFileSync(file, source);
    return await generateCustomFunctionsMetadata(file);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

describe("functions.json beside what Microsoft's generator writes", async () => {
  const ours = functionsJson(registry, base);
  const { metadataJson, errors, associate } = await generated(
    registry.map((descriptor, index) => stubOf(descriptor, ours.functions[index]?.helpUrl ?? "")).join("\n"),
  );
  const theirs = errors.length > 0 ? [] : (JSON.parse(metadataJson) as { functions: Record<string, unknown>[] }).functions;

  it("is accepted without a complaint", () => {
    expect(errors).toEqual([]);
    expect(associate.map(({ id }) => id)).toEqual(registry.map(({ id }) => id));
  });

  it.each(ours.functions.map((mine, index) => ({ id: mine.id, mine, index })))("says the same of $id", ({ mine, index }) => {
    // The generator leaves out what is false, and the type of a result that may be anything.
    const parameters = mine.parameters.map(({ name, optional, ...rest }) => ({
      name: jsName(name),
      ...rest,
      ...(optional ? { optional } : {}),
    }));
    expect(theirs[index]).toEqual({ ...mine, parameters, result: { dimensionality: mine.result.dimensionality } });
  });

  it("sees a name that Excel would refuse, and a name used twice", async () => {
    const [first] = registry;
    if (first === undefined) return expect.fail("no functions");
    const wrong = await generated(stubOf({ ...first, id: "1.SG" }, base));
    expect(wrong.errors.length).toBeGreaterThan(0);
    const twice = await generated(stubOf(first, base) + stubOf(first, base).replace("function wort_sg", "function other"));
    expect(twice.errors.length).toBeGreaterThan(0);
  });
});
