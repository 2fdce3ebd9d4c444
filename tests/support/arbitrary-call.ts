import fc from "fast-check";
import type {
  AnyDescriptor,
  CellValue,
  Column,
  Limits,
  ListParameter,
  Matrix,
  NumberParameter,
  Parameter,
} from "../../src/functions/describe";
import type { UnitSystem } from "../../src/functions/quantities";
import { argumentsOf, placesOf, typedValue } from "./registry-probe";

/**
 * A call made up from a description alone: numbers from the whole of their limits, in the core's unit, so that the
 * same physical call can be typed in both unit systems. `null` stands for an argument or a cell left empty.
 */
type CoreCell = number | string | null;
export type CoreArgument = CoreCell | readonly (readonly CoreCell[])[];

function numberIn({ limits, typical }: Pick<NumberParameter | ListParameter, "limits" | "typical">): fc.Arbitrary<number> {
  const [low, high] = insideOf(limits);
  const near = [Math.max(low, typical - 0.4 * Math.abs(typical)), Math.min(high, typical + 0.4 * Math.abs(typical))] as const;
  const between = (from: number, to: number) => fc.double({ min: Math.min(from, to), max: Math.max(from, to), noNaN: true });
  // Specific gravities near the usual one lie within a few hundredths.
  const close =
    typical > 0.98 && typical < 1.2 && high === 1.2
      ? between(Math.max(low, typical - 0.03), Math.min(high, typical + 0.03))
      : between(...near);
  // Nine digits, so that two numbers are the same or plainly not; and no 0, which may stand for an empty cell.
  return fc
    .oneof({ weight: 3, arbitrary: close }, { weight: 1, arbitrary: between(low, high) })
    .map((value) => Number(value.toPrecision(9)) || typical);
}

/** A hair inside the limits, so that no conversion there and back falls out of them. */
function insideOf({ above, atLeast, below, atMost }: Limits): [number, number] {
  const low = above ?? atLeast ?? -1e6;
  const high = below ?? atMost ?? 1e6;
  const hair = 1e-6 * (high - low);
  return [low + hair, high - hair];
}

function cellIn(column: Column): fc.Arbitrary<CoreCell> {
  if (column.kind === "number")
    return column.words === undefined
      ? numberIn(column)
      : fc.oneof({ weight: 4, arbitrary: numberIn(column) }, { weight: 1, arbitrary: fc.constantFrom(...column.words) });
  return column.kind === "choice" ? fc.constantFrom(...column.choices) : fc.constantFrom("first", "second", "third");
}

function argumentFor(parameter: Parameter, rows: number, shown: readonly unknown[]): fc.Arbitrary<CoreArgument> {
  // Answers are counted in whole ones; a part of one, which is refused, comes now and then.
  if (parameter.kind === "number" && parameter.quantity === "count")
    return fc.oneof({ weight: 9, arbitrary: numberIn(parameter).map(Math.round) }, { weight: 1, arbitrary: numberIn(parameter) });
  if (parameter.kind === "number") return numberIn(parameter);
  if (parameter.kind === "choice") return fc.constantFrom(...parameter.choices);
  if (parameter.kind === "list")
    return fc
      .array(fc.oneof({ weight: 12, arbitrary: numberIn(parameter) }, { weight: 1, arbitrary: fc.constant(null) }), {
        minLength: rows,
        maxLength: rows,
      })
      .map((cells) => cells.map((cell) => [cell]));
  if (parameter.kind === "block")
    return fc.integer({ min: 2, max: 6 }).chain((columns) => {
      // Scores that often come twice, as whole ones do.
      const cell = fc.oneof({ weight: 8, arbitrary: fc.integer({ min: 1, max: 5 }) }, { weight: 1, arbitrary: numberIn(parameter) });
      return fc.array(fc.array(cell, { minLength: columns, maxLength: columns }), { minLength: rows, maxLength: rows });
    });
  if (parameter.kind === "table") {
    const layout = parameter.layouts[0] ?? [];
    const row = fc.tuple(
      ...layout.map((key) => (key === null ? fc.constant("anything") : cellIn(parameter.columns[key] ?? { kind: "text", doc: "" }))),
    );
    return fc.array(row, { minLength: rows, maxLength: rows });
  }
  // Words and cells with a meaning of their own come from the examples.
  return fc.constantFrom(...shown.filter((value) => value !== null)) as fc.Arbitrary<CoreArgument>;
}

/** Any call of a function, without its `units`. Lists and tables that stand side by side have the same number of rows. */
export function arbitraryCall(descriptor: AnyDescriptor): fc.Arbitrary<CoreArgument[]> {
  const places = placesOf(descriptor).filter(({ name }) => name !== "units");
  const examples = descriptor.examples.map((example) => argumentsOf(descriptor, example));
  return fc.tuple(fc.integer({ min: 1, max: 6 }), fc.boolean()).chain(([rows, asLog]) =>
    fc.tuple(
      ...places.map(({ index, parameter }) => {
        const drawn = argumentFor(
          parameter,
          rows,
          examples.map((typed) => typed[index]),
        );
        const given = asLog && parameter.kind === "list" ? drawn.map((cells) => inOrderOfTime(parameter, cells)) : drawn;
        return parameter.optional === true ? fc.oneof(fc.constant(null), given) : given;
      }),
    ),
  );
}

/** Times that rise beside readings that fall: what a log looks like, and what chance alone hardly ever makes. */
function inOrderOfTime({ quantity: name }: ListParameter, cells: CoreArgument): CoreArgument {
  const rising = name === "days" || name === "minutes" || name === "date" ? 1 : -1;
  const numbers = (cells as Matrix<CoreCell>).flat().filter((cell) => typeof cell === "number");
  return numbers.sort((one, other) => rising * (one - other)).map((cell) => [cell]);
}

/** The call as typed in one of the unit systems. */
export function typedCall(descriptor: AnyDescriptor, core: readonly CoreArgument[], units: UnitSystem): unknown[] {
  const places = placesOf(descriptor);
  const others = places.filter(({ name }) => name !== "units");
  return places.map(({ name, parameter }) =>
    name === "units" ? units : typedArgument(parameter, core[others.findIndex((other) => other.name === name)] ?? null, units),
  );
}

function typedArgument(parameter: Parameter, value: CoreArgument, units: UnitSystem): unknown {
  if (value === null) return null;
  if (parameter.kind === "number" || parameter.kind === "list" || parameter.kind === "block")
    return eachCell(value, (cell) => (typeof cell === "number" ? typedValue(parameter.quantity, cell, units) : cell));
  if (parameter.kind !== "table" || !Array.isArray(value)) return value;
  const layout = parameter.layouts[0] ?? [];
  return (value as Matrix<CoreCell>).map((row) =>
    row.map((cell, position): CellValue => {
      const column = layout[position] == null ? undefined : parameter.columns[layout[position]];
      return typeof cell === "number" && column?.kind === "number" ? typedValue(column.quantity, cell, units) : cell;
    }),
  );
}

const eachCell = (value: CoreArgument, change: (cell: CoreCell) => CoreCell): unknown =>
  Array.isArray(value) ? (value as Matrix<CoreCell>).map((row) => row.map(change)) : change(value as CoreCell);
