import { describe, expect, it } from "vitest";
import { ArgumentProblem, CellError } from "../../src/functions/cell-error";
import type { ListParameter, Matrix, NumberParameter, TableParameter } from "../../src/functions/describe";
import { missing, readNumber } from "../../src/functions/read-cell";
import { layoutText, readCells, readList, readTable } from "../../src/functions/read-range";
import { choice, gravities, list, minutes, number, optional, smallMass, temperature } from "../../src/functions/vocabulary";

function problemOf(read: () => unknown): string {
  try {
    return `read as ${JSON.stringify(read())}`;
  } catch (problem) {
    if (problem instanceof ArgumentProblem) return `${problem.code} ${problem.message}`;
    throw problem;
  }
}

const broken = new CellError("#REF!", "an input is #REF!");

describe("a column of numbers", () => {
  const days = list("days", "When.", { limits: { atLeast: 0, atMost: 100 }, typical: 5, blank: "zero" });
  const read = (range: Matrix, parameter: ListParameter = gravities("Readings.")) => readList("readings", range, parameter, "metric");

  it("keeps blank cells in their places, as null or as 0", () => {
    expect(read([[1.05], [""], [1.02], [null]])).toEqual([1.05, null, 1.02, null]);
    expect(read([[1], [""], [0]], days)).toEqual([1, 0, 0]);
  });

  it("may lie across, and may have a heading, which counts as a blank", () => {
    expect(read([[1.05, 1.02]])).toEqual([1.05, 1.02]);
    expect(read([["SG"], [1.05]])).toEqual([null, 1.05]);
    expect(read([["SG", 1.05]])).toEqual([null, 1.05]);
  });

  it("takes a blank first cell for what any blank is, whichever way the platform hands it over", () => {
    for (const blank of ["", " ", null]) {
      expect(read([[blank], [3]], days)).toEqual([0, 3]);
      expect(read([[blank], [1.05]])).toEqual([null, 1.05]);
    }
    expect(read([[0], [3]], days)).toEqual([0, 3]);
  });

  it("has its heading in the first cell only, and none when it is the only cell", () => {
    expect(problemOf(() => read([[1.05], ["SG"]]))).toBe(
      '#VALUE! readings row 2 must be a number, not the text "SG"; it must be from 0.980 to 1.200',
    );
    expect(problemOf(() => read([["SG"]]))).toBe(
      '#VALUE! readings row 1 must be a number, not the text "SG"; it must be from 0.980 to 1.200',
    );
  });

  it("is not filled in yet when nothing is in it, or only a heading", () => {
    expect(read([[""], [null]])).toBe(missing);
    expect(read([["SG"], [""]])).toBe(missing);
  });

  it("is no block", () => {
    expect(
      problemOf(() =>
        read([
          [1.05, 1.04],
          [1.03, 1.02],
        ]),
      ),
    ).toBe("#VALUE! readings must be a single column or a single row");
    expect(
      problemOf(() =>
        readCells("readings", [
          [1, 2],
          [3, 4],
        ]),
      ),
    ).toBe("#VALUE! readings must be a single column or a single row");
  });

  it("hands on an error, and names the row of what is wrong", () => {
    expect(problemOf(() => read([[1.05], [broken]]))).toBe("#REF! an input is #REF!");
    expect(problemOf(() => read([[1.05], [1.3]]))).toContain("readings row 2 is 1.3");
  });
});

describe("cells of any kind", () => {
  it("come as they are typed, and are missing only when all of them are", () => {
    expect(readCells("arguments", [[1.05, "", "simple", 0]])).toEqual([1.05, "", "simple", 0]);
    expect(readCells("arguments", [[0], [""], [null], ["  "]])).toBe(missing);
    expect(readCells("arguments", [[0], ["us"]])).toEqual([0, "us"]);
  });
});

describe("the rows of a table", () => {
  const hops: TableParameter = {
    kind: "table",
    doc: "hops",
    columns: {
      mass: smallMass("hops"),
      minutes: minutes("in the boil"),
      form: optional(choice("which", ["leaf", "pellet"]), "pellet"),
      name: { kind: "text", doc: "name", optional: true },
    },
    layouts: [
      ["mass", "minutes"],
      [null, "mass", "minutes"],
      ["mass", "minutes", "form", "name"],
    ],
  };
  const read = (range: Matrix, units: "metric" | "us" = "metric") => readTable("hops", range, hops, units);
  const rows = (range: Matrix) => {
    const table = read(range);
    return table === missing ? "missing" : [...table];
  };

  it("tell that one is half filled in, where the description asks for it", () => {
    const turned: TableParameter = { ...hops, layouts: [["minutes", "mass"]] };
    const half = [
      [60, 30],
      [20, ""],
    ];
    expect(readTable("hops", half, turned, "metric")).toBe(missing);
    expect(readTable("hops", half, { ...turned, halfFilled: "waits" }, "metric")).toMatchObject({ incomplete: true, height: 2 });
    expect(readTable("hops", half.slice(0, 1), { ...turned, halfFilled: "waits" }, "metric")).toMatchObject({ incomplete: false });
    expect(readTable("hops", [["", ""]], { ...turned, halfFilled: "waits" }, "metric")).toBe(missing);
  });

  it("carry their place as typed, a heading not counted, and defaults for what is not given", () => {
    expect(
      rows([
        ["g", "min"],
        [30, 60],
        ["", ""],
        [20, 10],
      ]),
    ).toEqual([
      { rowNumber: 1, mass: 30, minutes: 60, form: "pellet", name: undefined },
      { rowNumber: 3, mass: 20, minutes: 10, form: "pellet", name: undefined },
    ]);
    expect(
      rows([
        [30, 60, "Leaf", "Perle"],
        [20, 10, "", ""],
      ]),
    ).toEqual([
      { rowNumber: 1, mass: 30, minutes: 60, form: "leaf", name: "Perle" },
      { rowNumber: 2, mass: 20, minutes: 10, form: "pellet", name: undefined },
    ]);
  });

  it("are passed over when nothing is in them: blank, 0, or no first column yet", () => {
    expect(
      rows([
        [30, 60],
        [0, 0],
        [null, ""],
        ["", 15],
        [0, 15],
      ]),
    ).toHaveLength(1);
    expect(rows([["", 15]])).toBe("missing");
  });

  it("wait for a number in a row that has begun", () => {
    const timed: TableParameter = {
      ...hops,
      columns: { mass: smallMass("hops"), alpha: number("percent", { doc: "alpha", limits: { above: 0, atMost: 30 }, typical: 5 }) },
      layouts: [["mass", "alpha"]],
    };
    expect(
      readTable(
        "hops",
        [
          [30, 5],
          [20, ""],
        ],
        timed,
        "metric",
      ),
    ).toBe(missing);
    expect(
      readTable(
        "hops",
        [
          [30, 5],
          ["", ""],
        ],
        timed,
        "metric",
      ),
    ).not.toBe(missing);
  });

  it("keep the height of the range without its heading", () => {
    expect(
      read([
        ["g", "min"],
        [30, 60],
        ["", ""],
        ["", ""],
      ]),
    ).toMatchObject({ height: 3 });
    expect(
      read([
        [30, 60],
        ["", ""],
      ]),
    ).toMatchObject({ height: 2 });
  });

  it("are in the brewer's unit, and pass over a column that is of no concern, whatever stands there", () => {
    const [first] = [...(read([["Perle", 1, 60]], "us") as Iterable<{ mass: number }>)];
    expect(first?.mass).toBeCloseTo(28.349523125, 9);
    expect(rows([[broken, 30, 60]])).toHaveLength(1);
  });

  it("hand on an error in a column that counts", () => {
    expect(problemOf(() => read([[30, broken]]))).toBe("#REF! an input is #REF!");
    expect(problemOf(() => read([[30, 60, "leaf", broken]]))).toBe("#REF! an input is #REF!");
  });

  it("fit one of the widths that the message then lists", () => {
    expect(problemOf(() => read([[30]]))).toBe(
      "#VALUE! hops is 1 column wide; it must hold mass (g or oz) | minutes, or (anything) | mass (g or oz) | minutes, or mass (g or oz) | minutes | form | name",
    );
    expect(layoutText(hops, ["mass", null, "form"])).toBe("mass (g or oz) | (anything) | form");
  });

  it("begin below a heading, but a choice in the first row is none", () => {
    const parts: TableParameter = {
      kind: "table",
      doc: "steps",
      columns: { part: choice("when", ["mash", "boil"]), minutes: minutes("how long") },
      layouts: [["part", "minutes"]],
    };
    expect(
      problemOf(() =>
        readTable(
          "steps",
          [
            ["boil", "long"],
            ["mash", 60],
          ],
          parts,
          "metric",
        ),
      ),
    ).toBe('#VALUE! steps row 1: minutes must be a number, not the text "long"; it must be from 0 to 1440 min');
    expect(
      problemOf(() =>
        readTable(
          "steps",
          [
            [" Boil ", "long"],
            ["mash", 60],
          ],
          parts,
          "metric",
        ),
      ),
    ).toContain("steps row 1: minutes must be a number");
    expect(
      readTable(
        "steps",
        [
          ["Part", "Minutes"],
          ["mash", 60],
        ],
        parts,
        "metric",
      ),
    ).toMatchObject({ height: 1, 0: { part: "mash" } });
    // A heading over the choices alone says nothing: no number stands below a word.
    expect(
      problemOf(() =>
        readTable(
          "steps",
          [
            ["Part", ""],
            ["mash", 60],
          ],
          parts,
          "metric",
        ),
      ),
    ).toContain('steps row 1: part is the text "Part"');
  });
});

describe("a number", () => {
  const store = temperature("Store.", { atLeast: 0, atMost: 30 }, 20, { covered: { from: 5, to: 25, by: "the rule" } });
  const read = (typed: unknown, parameter: NumberParameter = store, units: "metric" | "us" = "metric") =>
    readNumber("store", typed, parameter, units);

  it("is refused outside its limits, and not known outside what the source covers", () => {
    expect(problemOf(() => read(31))).toBe("#VALUE! store is 31 °C; it must be from 0 to 30 °C");
    expect(problemOf(() => read(26))).toBe("#N/A store is 26 °C; the rule covers 5 °C to 25 °C");
    expect(problemOf(() => read(4, store))).toContain("#N/A store is 4 °C");
    expect([5, 25].map((typed) => read(typed))).toEqual([5, 25]);
  });

  it("may stand a rounding off a limit, as one typed in the other unit system does", () => {
    const gallons = number("volume", { doc: "Some.", limits: { atLeast: 1, atMost: 20 }, typical: 5 });
    expect(read(20 / 3.785411784 + 1e-10, gallons, "us")).toBeCloseTo(20, 8);
    expect(read(1 / 3.785411784 - 1e-11, gallons, "us")).toBeCloseTo(1, 8);
    expect(problemOf(() => read(20.00001, gallons))).toContain("#VALUE!");
    expect(problemOf(() => read(0.99999, gallons))).toContain("#VALUE!");
    expect(read(25 + 1e-10)).toBeCloseTo(25, 8);
    expect(read(5 - 1e-10)).toBeCloseTo(5, 8);
    expect(problemOf(() => read(25.00001))).toContain("#N/A");
  });

  it("blank stands for its default where nought is a value, else for not filled in yet", () => {
    const rest = minutes("Rest.");
    for (const blank of [null, undefined, "", "  "]) {
      expect(read(blank, rest)).toBe(0);
      expect(read(blank, { ...rest, default: 15 })).toBe(15);
      expect(read(blank)).toBe(missing);
    }
    expect(read(0, { ...rest, default: 15 })).toBe(0);
    expect(read(0)).toBe(missing);
  });

  it("is no text, no truth value, and not infinite", () => {
    for (const typed of ["20", true, NaN, Infinity]) expect(problemOf(() => read(typed))).toMatch(/^#VALUE! store must be a number, not /);
  });
});
