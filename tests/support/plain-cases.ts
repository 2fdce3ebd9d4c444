import fc from "fast-check";
import { call } from "../../src/functions/call";
import { CellError } from "../../src/functions/cell-error";
import type { AnyDescriptor, NumberParameter } from "../../src/functions/describe";
import { quantity, type UnitSystem } from "../../src/functions/quantities";
import { address, block, columnLetters } from "../../src/workbook/grid/plan/addresses";
import { PlainFormulas } from "../../src/workbook/exchange/unplug/plain-formula";
import { WorkingCells } from "../../src/workbook/exchange/unplug/working-cells";
import { corners, type Surroundings } from "../../src/workbook/exchange/unplug/references";
import { arbitraryCall, typedCall } from "./arbitrary-call";
import { argumentsOf, placesOf, unitsOf, withArgument } from "./registry-probe";

export type Answer = number | string | { readonly error: string };

/** A call with its inputs in cells, its plain formulas, and what the call itself answers. */
export interface PlainCase {
  readonly label: string;
  /** Contents by address. */
  readonly cells: ReadonlyMap<string, number | string>;
  readonly formulas: readonly { readonly text: string; readonly wanted: Answer }[];
  /** Formulas that these rest on, by address. */
  readonly workings: ReadonlyMap<string, string>;
  readonly height: number;
}

/** Arguments in columns A, B, C… from a row on; a table takes as many columns as it has. */
function layOut(
  typed: readonly unknown[],
  firstRow: number,
): { references: string[]; cells: Map<string, number | string>; height: number } {
  const cells = new Map<string, number | string>();
  let column = 1;
  let height = 1;
  const references = typed.map((value) => {
    if (value === null) return "";
    const matrix = (Array.isArray(value) ? value : [[value]]) as unknown[][];
    const width = matrix[0]?.length ?? 1;
    matrix.forEach((line, row) =>
      line.forEach((cell, at) => {
        if (typeof cell === "number" || (typeof cell === "string" && cell !== ""))
          cells.set(`${columnLetters(column + at)}${firstRow + row}`, cell);
      }),
    );
    const from = `${columnLetters(column)}${firstRow}`;
    const to = `${columnLetters(column + width - 1)}${firstRow + matrix.length - 1}`;
    column += width;
    height = Math.max(height, matrix.length);
    return Array.isArray(value) ? `${from}:${to}` : from;
  });
  return { references, cells, height };
}

/** Workings stand far to the right, beyond the widest answer. */
const firstWorking = 300;

/** The cells of a case, for the plain formulas to look around in. */
export function around(cells: ReadonlyMap<string, number | string>): Surroundings {
  const shapeOf = (reference: string) => {
    const found = corners(reference);
    return found && { rows: found.to.row - found.from.row + 1, columns: found.to.column - found.from.column + 1 };
  };
  return {
    shapeOf,
    valuesOf: (reference) => {
      const found = corners(reference);
      const shape = shapeOf(reference);
      if (!found || !shape) return undefined;
      return Array.from({ length: shape.rows }, (_, row) =>
        Array.from(
          { length: shape.columns },
          (__, column) => cells.get(`${columnLetters(found.from.column + column)}${found.from.row + row}`) ?? "",
        ),
      );
    },
  };
}

const literal = (value: unknown): string => (typeof value === "number" ? String(value) : `"${String(value)}"`);

export function plainCase(
  descriptor: AnyDescriptor,
  typed: readonly unknown[],
  label: string,
  firstRow: number,
  inline: boolean,
): PlainCase {
  const { references, cells, height } = layOut(typed, firstRow);
  const texts = references.map((reference, index) =>
    inline && reference !== "" && !Array.isArray(typed[index]) ? literal(typed[index]) : reference,
  );
  const formula = `=GYLE.${descriptor.id}(${texts.join(",")})`;
  const working = new WorkingCells({ row: firstRow, column: firstWorking });
  const plain = new PlainFormulas(around(cells), working.put);
  const size = plain.size(formula);
  const answer = call(descriptor, typed);
  const formulas = Array.from({ length: size.rows * size.columns }, (_, index) => {
    const place = { row: Math.floor(index / size.columns), column: index % size.columns };
    const wanted = answer[place.row]?.[place.column] ?? "";
    return { text: plain.cell(formula, size, place), wanted: wanted instanceof CellError ? { error: wanted.code } : wanted };
  });
  const blocks = working.taken();
  const workings = new Map(
    blocks.flatMap(({ range, contents }) => {
      const { from } = block(range);
      return contents.flatMap((row, r) =>
        row.flatMap((text, c): [string, string][] => (text === "" ? [] : [[address(from.row + r, from.column + c), text]])),
      );
    }),
  );
  const lowest = Math.max(0, ...blocks.map(({ range }) => block(range).to.row - firstRow + 1));
  return { label: `${label}: ${formula} of ${JSON.stringify(typed)}`, cells, formulas, workings, height: Math.max(height, lowest) + 1 };
}

/** Calls of a function from its description: its examples, the whole of its limits, each edge, each argument left blank or wrong. */
export function typedCalls(descriptor: AnyDescriptor, count: number, seed: number): { label: string; typed: unknown[] }[] {
  const examples = descriptor.examples.map((example, index) => ({
    label: `example ${index + 1}`,
    typed: argumentsOf(descriptor, example),
  }));
  // Numbers that nobody types, too small for a spreadsheet to hold, are left out.
  const drawn = fc
    .sample(arbitraryCall(descriptor), { numRuns: count, seed })
    .flatMap((core) =>
      (["metric", "us"] as const).map((units: UnitSystem) => ({ label: `drawn, ${units}`, typed: typedCall(descriptor, core, units) })),
    )
    .filter(({ typed }) => typed.flat(2).every((cell) => typeof cell !== "number" || cell === 0 || Math.abs(cell) > 1e-12));
  const [first] = examples;
  const changed =
    first === undefined
      ? []
      : placesOf(descriptor).flatMap(({ index, name, parameter }) => {
          const old = first.typed[index];
          if (parameter.kind === "number")
            return numberProbes(parameter, unitsOf(descriptor, first.typed)).map(([what, value]) => ({
              label: `${name} ${what}`,
              typed: withArgument(first.typed, index, value),
            }));
          if (parameter.kind === "choice")
            return [...parameter.choices, "nonsense", null].map((value) => ({
              label: `${name} ${String(value)}`,
              typed: withArgument(first.typed, index, value),
            }));
          return Array.isArray(old)
            ? tableProbes(old as unknown[][]).map(([what, value]) => ({
                label: `${name} ${what}`,
                typed: withArgument(first.typed, index, value),
              }))
            : [];
        });
  // A numeric formula with an argument missing has no answer yet; arrays in formulas cannot hold nothing.
  return [...examples, ...drawn, ...changed, ...(first === undefined ? [] : blankAndWrong(descriptor, first.typed))];
}

/** One argument not filled in and another one wrong: whether the answer is blank or an error goes by their order. */
function blankAndWrong(descriptor: AnyDescriptor, typed: readonly unknown[]): { label: string; typed: unknown[] }[] {
  const places = placesOf(descriptor);
  const without = (old: unknown): unknown => (Array.isArray(old) ? (old as unknown[][]).map((row) => row.map(() => "")) : "");
  const wrong = (old: unknown): unknown =>
    Array.isArray(old)
      ? (old as unknown[][]).map((row) => row.map((cell) => (typeof cell === "number" ? 1e9 : cell)))
      : typeof old === "number"
        ? 1e9
        : "nonsense";
  return places.flatMap((blank) =>
    places
      .filter(({ index, parameter }) => index !== blank.index && parameter.kind !== "text")
      .map((other) => ({
        label: `${blank.name} blank, ${other.name} wrong`,
        typed: withArgument(withArgument(typed, blank.index, without(typed[blank.index])), other.index, wrong(typed[other.index])),
      })),
  );
}

function numberProbes({ limits, quantity: name, typical, covered }: NumberParameter, units: UnitSystem): [string, unknown][] {
  const edges = [limits.atLeast ?? limits.above, limits.atMost ?? limits.below, covered?.from, covered?.to].filter(
    (edge) => edge !== undefined,
  );
  const shown = (core: number): number => quantity(name).fromCore(core, units);
  return [
    ["typical", shown(typical)],
    ["blank", ""],
    ["nought", 0],
    ["a word", "some"],
    ...edges.flatMap((edge): [string, unknown][] => [
      ["at a limit", shown(edge)],
      ["below a limit", shown(edge - 1e-3 * Math.max(1, Math.abs(edge)))],
      ["above a limit", shown(edge + 1e-3 * Math.max(1, Math.abs(edge)))],
    ]),
  ];
}

/** The same range a row shorter or longer, with a heading, with an empty row, with a hole, with a word where a number belongs. */
function tableProbes(rows: unknown[][]): [string, unknown][] {
  const width = rows[0]?.length ?? 1;
  const last = rows.length - 1;
  const holes = Array.from({ length: width }, (_, column): [string, unknown][] => [
    [`hole in column ${column + 1}`, rows.map((row, at) => (at === last ? row.map((cell, index) => (index === column ? "" : cell)) : row))],
    [
      `a far too large number in column ${column + 1}`,
      rows.map((row, at) => (at === last ? row.map((cell, index) => (index === column && typeof cell === "number" ? 1e9 : cell)) : row)),
    ],
    [
      `a hole in column ${column + 1} and a number below that is far too large`,
      [
        ...rows.map((row, at) => (at === last ? row.map((cell, index) => (index === column ? "" : cell)) : row)),
        ...rows.slice(0, 1).map((row) => row.map((cell) => (typeof cell === "number" ? 1e9 : cell))),
      ],
    ],
    [
      `a word below in column ${column + 1}`,
      [...rows, ...rows.slice(0, 1).map((row) => row.map((cell, index) => (index === column && typeof cell === "number" ? "some" : cell)))],
    ],
  ]).flat();
  const heading = Array<string>(width).fill("heading");
  return [
    ["a row shorter", rows.length > 1 ? rows.slice(0, -1) : rows],
    ["a row longer", [...rows, ...rows.slice(-1)]],
    ["with a heading", [heading, ...rows]],
    // A single row of words is nothing to the call yet, and an error to the plain formula: on the safe side.
    ["with a heading in place of its first row", rows.length > 1 ? [heading, ...rows.slice(1)] : rows],
    ["with an empty row", [...rows, Array<string>(width).fill("")]],
    ["empty", rows.map((row) => row.map(() => ""))],
    ...holes,
  ];
}
