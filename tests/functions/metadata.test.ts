import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { functionsJson } from "../../src/functions/metadata";
import { registry } from "../../src/functions/registry";

/** functions.json as Excel reads it (Office Add-ins documentation, "Manually create JSON metadata for custom functions"). */
const parameterSchema = z.strictObject({
  name: z.string().regex(/^[a-z][a-z0-9_]*$/),
  description: z
    .string()
    .min(5)
    .regex(/[.:)]$/, "ends like a sentence"),
  type: z.literal("any"),
  dimensionality: z.literal("matrix"),
  optional: z.boolean(),
});
const functionsSchema = z.strictObject({
  allowErrorForDataTypeAny: z.literal(true),
  functions: z
    .array(
      z.strictObject({
        id: z.string().regex(/^[A-Z][A-Z0-9._]{2,127}$/),
        name: z.string().regex(/^[A-Z][A-Z0-9._]{2,127}$/),
        description: z.string().min(20),
        parameters: z.array(parameterSchema),
        result: z.strictObject({ type: z.literal("any"), dimensionality: z.literal("matrix") }),
      }),
    )
    .min(1),
});

const written: unknown = JSON.parse(JSON.stringify(functionsJson(registry)));

/** Every id ever published, one a line, in the order of publication. Sheets out there use them: none may ever go or change. */
const published = readFileSync(new URL("function-ids.txt", import.meta.url), "utf8")
  .split("\n")
  .filter((line) => line !== "");

describe("functions.json", () => {
  it("has the shape that Excel reads, and nothing else in it", () => {
    const { functions } = functionsSchema.parse(written);
    expect(functions.map(({ id }) => id)).toEqual(registry.map(({ id }) => id));
    for (const { id, name } of functions) expect(name).toBe(id);
  });

  it("names each parameter of a function once", () => {
    for (const { id, parameters } of functionsSchema.parse(written).functions) {
      expect(new Set(parameters.map(({ name }) => name)).size, id).toBe(parameters.length);
    }
  });

  it("would not pass with a wrong or an unknown property", () => {
    const { functions } = functionsSchema.parse(written);
    const [first] = functions;
    for (const wrong of [
      { ...first, id: "og" },
      { ...first, volatile: true },
      { ...first, parameters: [{ ...first?.parameters[0], type: "number" }] },
    ]) {
      expect(functionsSchema.safeParse({ allowErrorForDataTypeAny: true, functions: [wrong] }).success).toBe(false);
    }
  });
});

describe("the published ids", () => {
  const ids = registry.map(({ id }) => id);

  it("are all still there", () => {
    expect(published.filter((id) => !ids.includes(id))).toEqual([]);
  });

  it("list every function: a new one is added at the end of function-ids.txt", () => {
    expect(ids.filter((id) => !published.includes(id))).toEqual([]);
    expect(new Set(published).size).toBe(published.length);
  });
});
