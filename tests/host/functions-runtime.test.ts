import vm from "node:vm";
import { beforeAll, describe, expect, it } from "vitest";
import { call, type Answer } from "../../src/functions/call";
import { CellError } from "../../src/functions/cell-error";
import type { AnyDescriptor, Example } from "../../src/functions/describe";
import { functionNamed, registry } from "../../src/functions/registry";
import { startFunctionsRuntime, type FunctionsRuntime, type HostAnswer } from "./functions-runtime";

/**
 * The functions.js that ships, in Microsoft's own custom-functions runtime. What is asserted is what would travel to
 * Excel, after that runtime has had its way with our answers.
 */
let runtime: FunctionsRuntime;
beforeAll(() => {
  runtime = startFunctionsRuntime();
});

const asExcelSends = (argument: Example["arguments"][number]): unknown =>
  argument === null || Array.isArray(argument) ? argument : [[argument]];
const parameterCount = ({ parameters }: AnyDescriptor): number => Object.keys(parameters as object).length;
const padded = (descriptor: AnyDescriptor, typed: unknown[]): unknown[] => [
  ...typed,
  ...Array<null>(parameterCount(descriptor) - typed.length).fill(null),
];

/** Of Excel's errors these carry a message: CustomFunctionError._getMessage in Microsoft's runtime. */
const withMessage = ["#VALUE!", "#N/A"];

/** Our answer as it must arrive: values as they are; errors with their code, and the message where Excel passes it on. */
function expected(answer: Answer): HostAnswer {
  const cell = (value: Answer[number][number]): unknown =>
    value instanceof CellError
      ? { code: value.code, ...(withMessage.includes(value.code) && value.message !== "" ? { message: value.message } : {}) }
      : value;
  return { ok: true, value: answer.map((row) => row.map(cell)) };
}

/** The same of what came over the bridge, without the names that Excel has for its own error types. */
function arrived(answer: HostAnswer): HostAnswer {
  const cell = (value: unknown): unknown => {
    if (typeof value !== "object" || value === null) return value;
    const { valueType, code, message } = value as Record<string, unknown>;
    expect(valueType).toBe("CustomFunctionError");
    return { code, ...(message === undefined ? {} : { message }) };
  };
  return answer.ok ? { ok: true, value: (answer.value as unknown[][]).map((row) => row.map(cell)) } : answer;
}

describe("Microsoft's runtime", () => {
  it("takes our map: every id, none twice, none refused", () => {
    expect(runtime.associated).toEqual(registry.map(({ id }) => id));
  });

  it("gets from every function, for every example, what the source answers", async () => {
    const examples = registry.flatMap((descriptor) =>
      descriptor.examples.map((example) => ({ descriptor, typed: example.arguments.map(asExcelSends) })),
    );
    expect(examples.length).toBeGreaterThanOrEqual(registry.length);
    const answers = await runtime.call(
      examples.map(({ descriptor, typed }) => ({ id: descriptor.id, parameters: padded(descriptor, typed) })),
    );
    expect(answers.map(arrived)).toEqual(examples.map(({ descriptor, typed }) => expected(call(descriptor, typed))));
  });

  it("gets an error in the cell, with code and message, for every function that is given nonsense", async () => {
    const wrong = (descriptor: AnyDescriptor): unknown[] => Array.from({ length: parameterCount(descriptor) }, () => [["no such thing"]]);
    const answers = (await runtime.call(registry.map((descriptor) => ({ id: descriptor.id, parameters: wrong(descriptor) })))).map(arrived);
    expect(answers).toEqual(registry.map((descriptor) => expected(call(descriptor, wrong(descriptor)))));
    const [ebc] = (await runtime.call([{ id: "BEER.EBC", parameters: [[["pale"]]] }])).map(arrived);
    expect(ebc).toEqual({ ok: true, value: [[{ code: "#VALUE!", message: expect.stringContaining("pale") as string }]] });
  });
});

describe("a call through Microsoft's runtime", () => {
  const answer = async (id: string, ...parameters: unknown[]): Promise<HostAnswer> =>
    arrived((await runtime.call([{ id, parameters }]))[0]!);

  it("counts a null as an argument left out, as Excel sends it", async () => {
    const whole = expected(call(functionNamed("PACK.RESIDUAL"), [[[20]], [["metric"]]]));
    expect(await answer("PACK.RESIDUAL", [[20]], null)).toEqual(whole);
    expect(await answer("PACK.RESIDUAL", [[20]], [["metric"]])).toEqual(whole);
  });

  it("is not misled by the invocation object that the runtime appends, even where fewer arguments came", async () => {
    const whole = expected(call(functionNamed("BEER.ABV"), [[[1.05]], [[1.01]]]));
    expect(await answer("BEER.ABV", [[1.05]], [[1.01]], null)).toEqual(whole);
    expect(await answer("BEER.ABV", [[1.05]], [[1.01]])).toEqual(whole);
  });

  it("spills: a column in, a column out, and an error only in its own row", async () => {
    const division = { type: "CustomFunctionError", code: "#DIV/0!" };
    const spilled = await answer("BEER.ABV", [[1.05], [division], [""], [1.06]], [[1.01]], null);
    expect(spilled).toEqual({ ok: true, value: [[expect.closeTo(5.31, 2)], [{ code: "#DIV/0!" }], [""], [expect.closeTo(6.67, 2)]] });
  });

  it("keeps the message of #N/A, outside a source's range", async () => {
    expect(await answer("WORT.PLATO", [[1.19]])).toEqual({
      ok: true,
      value: [[{ code: "#N/A", message: expect.stringContaining("1.19") as string }]],
    });
  });

  it("answers an id that nobody registered with a failure, not with silence", async () => {
    expect(await answer("BEER.NOSUCH", [[1]])).toMatchObject({ ok: false });
  });
});

describe("with the page's manners taken away, as Microsoft's library does", () => {
  it("alert, confirm and prompt throw, history is without pushState, and our functions still answer", async () => {
    expect(vm.runInContext("[history.pushState, history.replaceState]", runtime.window)).toEqual([null, null]);
    for (const gone of ["alert", "confirm", "prompt"])
      expect(() => vm.runInContext(`${gone}("?")`, runtime.window) as unknown).toThrow("is not supported");
    expect((await runtime.call([{ id: "BEER.ABV", parameters: [[[1.05]], [[1.01]], null] }]))[0]).toMatchObject({ ok: true });
  });
});
