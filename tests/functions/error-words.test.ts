import { describe, expect, it } from "vitest";
import { call, callScalar } from "../../src/functions/call";
import { CellError } from "../../src/functions/cell-error";
import type { AnyDescriptor, Matrix, Parameter } from "../../src/functions/describe";
import { limitText } from "../../src/functions/messages";
import { quantity } from "../../src/functions/quantities";
import { functionNamed, registry } from "../../src/functions/registry";
import { argumentsOf, isScalar, numberPlaces, placesOf, typedValue, unitsOf, withArgument } from "../support/registry-probe";

const functions = registry.map((descriptor) => ({
  id: descriptor.id,
  descriptor,
  calls: descriptor.examples.map((example) => argumentsOf(descriptor, example)),
}));

const errorsOf = (descriptor: AnyDescriptor, typed: readonly unknown[]): CellError[] =>
  call(descriptor, typed)
    .flat()
    .filter((cell): cell is CellError => cell instanceof CellError);
const message = (id: string, ...typed: unknown[]): string => {
  const cell = callScalar(functionNamed(id), typed);
  return cell instanceof CellError ? `${cell.code} ${cell.message}` : `no error but ${String(cell)}`;
};

/** What slips into a cell where a number belongs, and what the message says to it. */
const texts: readonly { typed: string; says: RegExp }[] = [
  { typed: "soon", says: /not the text "soon"/ },
  { typed: "20", says: /kept as a text: type it again\)/ },
  { typed: "\u00a020", says: /kept as a text: type it again\)/ },
  { typed: "２０", says: /kept as a text: type it again\)/ },
  { typed: "20,5", says: /decimal sign of your spreadsheet/ },
  { typed: "20 furlongs", says: /as a number alone|the number alone|type 20 alone/ },
  { typed: "75 %", says: /as a number alone|the number alone|type 75 alone/ },
  { typed: "2026-11-28", says: /date or (a )?time/ },
];

/** Numbers that no argument can take, and slips of the kind that some may. */
const numbers = [-1e6, 1e12, 1e-9, 0.05, 0.75, 12, 50, 68, 212, 1050, 7500, 20000];

/** Words of a broken program. */
const broken = /NaN|undefined|\[object|Infinity|internal error|null/;

/** Answers about the log as a whole name none of its columns. */
const ofTheLog = /^(too early to tell: |the newest reading )/;

function expectGoodWords(descriptor: AnyDescriptor, { message: words }: CellError): void {
  expect(words).not.toMatch(broken);
  const names = placesOf(descriptor).map(({ name }) => name);
  if (!ofTheLog.test(words)) expect(names, words).toContain(/^[a-z_0-9]+/.exec(words)?.[0]);
  expect(words, "no full stop").not.toMatch(/\.$/);
}

/** Every example of a function, with every place that the words are about. */
describe.each(functions)("the words of GYLE.$id", ({ descriptor, calls }) => {
  const takes = (...kinds: Parameter["kind"][]) => placesOf(descriptor).some(({ parameter }) => kinds.includes(parameter.kind));
  const numbersIn = calls.flatMap((typed) => numberPlaces(descriptor, typed).map(({ parameter }) => parameter.quantity));

  if (numbersIn.length > 0)
    it("name the argument, what is allowed and the way out when a number is something else", () => {
      for (const typed of calls) {
        const units = unitsOf(descriptor, typed);
        for (const { label, parameter, put } of numberPlaces(descriptor, typed)) {
          const wrong = put as (value: unknown) => unknown[];
          for (const { typed: text, says } of texts) {
            const [error] = errorsOf(descriptor, wrong(text));
            if (error === undefined) expect.fail(`${label} takes the text "${text}"`);
            expect(error).toMatchObject({ code: "#VALUE!", message: expect.stringMatching(says) as string });
            expect(error.message.startsWith(`${label} must be a number, not the text`), error.message).toBe(true);
            expect(error.message).toContain(`it must be ${limitText(parameter.quantity, parameter.limits, units)}`);
            expectGoodWords(descriptor, error);
          }
          for (const other of [true, Number.NaN, { a: 1 }])
            for (const error of errorsOf(descriptor, wrong(other))) expectGoodWords(descriptor, error);
          expect(errorsOf(descriptor, wrong(true)).length, label).toBeGreaterThan(0);
          expect(
            errorsOf(descriptor, wrong(new CellError("#DIV/0!", "an input is #DIV/0!"))).map(({ code }) => code),
            label,
          ).toContain("#DIV/0!");
        }
      }
    });

  if (numbersIn.length > 0)
    it("stay in a brewer's terms for any number", () => {
      for (const typed of calls) {
        for (const { put } of numberPlaces(descriptor, typed))
          for (const value of numbers) for (const error of errorsOf(descriptor, put(value))) expectGoodWords(descriptor, error);
      }
    });

  if (numbersIn.includes("temperature"))
    it("tell a temperature of the other scale", () => {
      for (const typed of calls) {
        const units = unitsOf(descriptor, typed);
        for (const { label, parameter, put } of numberPlaces(descriptor, typed)) {
          if (parameter.quantity !== "temperature") continue;
          const { atLeast = 0, atMost = 0 } = parameter.limits;
          const meant = Math.round(typedValue("temperature", (atLeast + atMost) / 2, units === "us" ? "metric" : "us"));
          const errors = errorsOf(descriptor, put(meant)).filter(
            (error) => error.message.startsWith(`${label} is `) && error.message.includes("it must be"),
          );
          for (const error of errors) expect(error.message).toContain(`looks like ${units === "us" ? "°C" : "°F"}, which is`);
        }
      }
    });

  if (takes("choice"))
    it("list the choices, and know a word that is nearly one", () => {
      for (const typed of calls) {
        for (const { index, name, parameter } of placesOf(descriptor)) {
          if (parameter.kind !== "choice") continue;
          for (const wrong of ["no such word", true, 5]) {
            const [error] = errorsOf(descriptor, withArgument(typed, index, wrong));
            expect(error).toMatchObject({
              code: "#VALUE!",
              message: expect.stringContaining(`it must be one of: ${parameter.choices.join(", ")}`) as string,
            });
            expectGoodWords(descriptor, error!);
          }
          const [choice = ""] = parameter.choices;
          const [error] = errorsOf(descriptor, withArgument(typed, index, `${choice}es`));
          expect(error?.message.startsWith(`${name} is the text`)).toBe(true);
          if (choice.length > 1) expect(error?.message).toContain(`did you mean "${choice}"?`);
        }
      }
    });

  if (takes("table", "list", "block", "cells"))
    it("say what a range must hold, whatever its shape", () => {
      for (const typed of calls) {
        for (const { index, name, parameter } of placesOf(descriptor)) {
          if (isScalar({ index, name, parameter })) continue;
          const range = (Array.isArray(typed[index]) ? typed[index] : [[1]]) as Matrix;
          const shapes = [
            range.map((row) => [...row, 1, 1, 1, 1, 1, 1, 1, 1]),
            range.map((row) => row.slice(1)),
            [
              [1, 2],
              [3, 4],
            ],
            range[0]?.map((_, column) => range.map((row) => row[column])) ?? [],
            [range[0]?.map(() => "heading") ?? []],
            [["heading"], ...range],
          ];
          for (const shape of shapes.filter((rows) => (rows[0]?.length ?? 0) > 0))
            for (const error of errorsOf(descriptor, withArgument(typed, index, shape))) expectGoodWords(descriptor, error);
          const [error] = errorsOf(descriptor, withArgument(typed, index, shapes[0]));
          if (parameter.kind === "table") expect(error?.message).toMatch(new RegExp(`^${name} is \\d+ columns wide; it must hold `));
        }
      }
    });
});

describe("the words for a slip", () => {
  it.each([
    [
      "a share for per cent",
      message("WORT.GRAVITY", [[4, 0.8, "mash"]], 20),
      "#VALUE! fermentables row 1: yield is 0.8 %; it must be above 1 and at most 100 % (write 80 for 80 %)",
    ],
    [
      "another share",
      message("WORT.GRAVITY", [[4, 80, "mash"]], 20, 0.75),
      "#VALUE! efficiency is 0.75 %; it must be above 1 and at most 100 % (write 75 for 75 %)",
    ],
    [
      "a share of alcohol",
      message("BEER.ORIGINAL", 0.05, 1.01),
      "#VALUE! abv is 0.05 %; it must be above 0.2 and at most 30 % (write 5 for 5 %)",
    ],
    [
      "a share for shrinkage",
      message("WATER.BUDGET", 20, 60, 3, 0, 0, 1, 0.04),
      "#VALUE! shrinkage is 0.04 %; it must be above 0.3 and at most 10 % (write 4 for 4 %)",
    ],
    [
      "a share for a yield to add",
      message("WORT.ENRICH", 20, 1.045, 1.05, 0.9),
      "#VALUE! yield is 0.9 %; it must be above 1 and at most 100 % (write 90 for 90 %)",
    ],
    [
      "a share for a malt's yield",
      message("WORT.POINTS", 0.8),
      "#VALUE! yield is 0.8 %; it must be above 1 and at most 100 % (write 80 for 80 %)",
    ],
    [
      "a share for alpha acid",
      message("HOPS.IBU", [[30, 0.08, 60]], 20, 1.05),
      "#VALUE! additions row 1 (headings not counted): alpha is 0.08 %; it must be 0 % or above 0.3 % (write 8 for 8 %)",
    ],
    [
      "litres for millilitres",
      message("BEER.ENERGY", 1.05, 1.01, 0.5),
      "#VALUE! serving is 0.5 mL; it must be from 30 to 5000 mL (a glass is given in mL or US fl oz: 500, not 0.5)",
    ],
    [
      "points for gravity",
      message("WORT.PLATO", 50),
      "#VALUE! gravity is 50; it must be from 0.980 to 1.200 (50 looks like points: write 1.050)",
    ],
    [
      "a lost decimal sign",
      message("WORT.PLATO", 1050),
      "#VALUE! gravity is 1050; it must be from 0.980 to 1.200 (write it as 1.050, with the decimal sign of your spreadsheet)",
    ],
    [
      "a number with the unit that is asked for",
      message("WATER.DECHLORINATE", "20 L", 3),
      '#VALUE! volume must be a number, not the text "20 L"; it must be above 0 and at most 10000 L (type 20 alone)',
    ],
    [
      "a number with another unit",
      message("WATER.DECHLORINATE", "5 gal", 3),
      '#VALUE! volume must be a number, not the text "5 gal"; it must be above 0 and at most 10000 L (give it in L, as a number alone)',
    ],
    [
      "°F on a metric sheet",
      message("PACK.PRIMING", 19, 2.4, 68),
      '#VALUE! temperature is 68 °C; it must be from -2 to 45 °C (68 looks like °F, which is 20 °C; for US units give "us" as units)',
    ],
    [
      "°C on a US sheet",
      message("PACK.PRIMING", 5, 2.4, 20, null, "us"),
      "#VALUE! temperature is 20 °F; it must be from 28.4 to 113 °F (20 looks like °C, which is 68 °F)",
    ],
    [
      "a hair below a limit",
      message("DAY.TIMELINE", 0.375, [["Cool", "after", 30]], null, 1e-9),
      "#VALUE! boil_minutes is 1e-9 min; it must be from 1 to 300 min",
    ],
    [
      "a day that is no date",
      message("PACK.READY", 11, 20),
      "#VALUE! packaged_on is 11; it must be a date from 1990-01-01 to 2100-12-31 (type a date from 1990 to 2100)",
    ],
    [
      "a date kept as a text",
      message("LOG.STEADY", [[1], ["2026-11-28"]], [[1.05], [1.01]]),
      '#VALUE! times row 2 must be a number, not the text "2026-11-28"; it must be from 0 to 73415 days (this date or time is kept as a text: type it again)',
    ],
    ["imperial measures", message("WATER.BOILS", 100, "imperial"), '#VALUE! units is the text "imperial"; it must be one of: metric, us'],
    [
      "another word for a sugar",
      message("PACK.PRIMING", 19, 2.4, 20, "Table sugar"),
      '#VALUE! sugar is the text "Table sugar"; it must be one of: dextrose, glucose, sucrose, malt extract, honey (did you mean "sucrose"?)',
    ],
    [
      "a formula for a salt",
      message("WATER.IONS", [["CaSO4", 4]], 20),
      '#VALUE! salts row 1: salt is the text "CaSO4"; it must be one of: gypsum, calcium chloride, calcium chloride anhydrous, epsom salt, magnesium chloride, table salt, baking soda, chalk, slaked lime (did you mean "gypsum"?)',
    ],
    [
      "half of a function's name",
      message("GAUGE.SPREAD", "ABV", [[1.05, 1.01]], [[0.002, 0.002]]),
      '#VALUE! function is the text "ABV", and there is no such function; type its name as text, for example "BEER.ABV"',
    ],
    [
      "a volume without its gravity",
      message("WORT.MIX", [[10], [5]], [[1.05], [""]]),
      "#VALUE! gravities row 2 is not filled in, but volumes row 2 is (water is 1.000)",
    ],
    [
      "a mash that would have to boil, in both scales",
      message("WATER.STRIKE", 50, 15, 20, 67),
      "#VALUE! water_volume is too little: the water would need 130 °C (266 °F); take more water, or check grain_mass and its unit",
    ],
  ])("%s", (_, found, expected) => {
    expect(found).toBe(expected);
  });
});

describe("no slip in a list passes for its heading", () => {
  it("a number with a decimal comma", () => {
    expect(message("LOG.STEADY", [[5], [6]], [["1,050"], [1.012]])).toContain('gravities row 1 must be a number, not the text "1,050"');
  });

  it("a number with its unit", () => {
    expect(
      message(
        "WATER.BLEND",
        [["6 L"], [4]],
        [
          [120, 10, 20, 30, 50, 300],
          [0, 0, 0, 0, 0, 0],
        ],
      ),
    ).toContain('shares row 1 must be a number, not the text "6 L"');
  });

  it("a word in the place of the first of six ions", () => {
    expect(message("WATER.IONS", [["gypsum", 4]], 20, [["unknown"], [10], [5], [15], [25], [180]])).toBe(
      "#VALUE! base must hold six numbers, not 5: calcium, magnesium, sodium, chloride, sulfate, bicarbonate",
    );
    expect(call(functionNamed("WATER.IONS"), [[["gypsum", 4]], 20, [["my water"], [60], [10], [5], [15], [25], [180]]])[1]).toEqual([
      "magnesium (Mg)",
      10,
    ]);
  });

  it("while a word above them is one", () => {
    expect(
      callScalar(functionNamed("LOG.STEADY"), [
        [["day"], [5], [6]],
        [["SG"], [1.012], [1.012]],
      ]),
    ).toBe("steady");
  });
});

describe("the probes", () => {
  it("reach every function that takes a number", () => {
    const reached = new Set(
      functions.filter(({ descriptor, calls }) => calls.some((typed) => numberPlaces(descriptor, typed).length > 0)).map(({ id }) => id),
    );
    expect(registry.filter(({ id }) => !reached.has(id)).map(({ id }) => id)).toEqual(["GAUGE.SPREAD"]);
    expect(quantity("temperature").toCore(68, "us")).toBeCloseTo(20);
  });
});
