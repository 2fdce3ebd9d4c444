import { argumentName, type AnyDescriptor, type Context, type Matrix, type Parameter } from "./describe";
import { quantity, type UnitSystem } from "./quantities";
import { missing, numberReader, readChoice, readText } from "./read-cell";
import { readBlock, readCells, readList, readTable } from "./read-range";

/** One argument of a function, with what can be known before anything is typed. */
export interface PreparedParameter {
  readonly key: string;
  /** "final_gravity": as the brewer sees it. */
  readonly name: string;
  readonly parameter: Parameter;
  /** One value for each cell of the answer; tables, lists and cells are taken whole. */
  readonly isScalar: boolean;
  readonly isOptional: boolean;
  /** What stands in for an optional one that is left out. */
  readonly standIn: unknown;
  /** One cell, for scalars. */
  readonly readCell: Readonly<Record<UnitSystem, (typed: unknown) => unknown>>;
}

export interface Prepared {
  readonly parameters: readonly PreparedParameter[];
  /** The arguments as `compute` gets them when none is given. */
  readonly standIns: Readonly<Record<string, unknown>>;
  /** The argument that says in which units the others are typed, if there is one. */
  readonly units: PreparedParameter | undefined;
  readonly context: Readonly<Record<UnitSystem, Context>>;
}

const known = new WeakMap<AnyDescriptor, Prepared>();

/** What the call wrapper needs of a description, worked out once for each function and not for each row. */
export function prepare(descriptor: AnyDescriptor): Prepared {
  const found = known.get(descriptor);
  if (found !== undefined) return found;
  const parameters = Object.entries(descriptor.parameters as Record<string, Parameter>).map(([key, parameter]) =>
    preparedParameter(key, parameter),
  );
  const prepared = {
    parameters,
    standIns: Object.fromEntries(parameters.map(({ key, standIn }) => [key, standIn])),
    units: parameters.find(({ key }) => key === "units"),
    context: { metric: context("metric"), us: context("us") },
  };
  known.set(descriptor, prepared);
  return prepared;
}

function preparedParameter(key: string, parameter: Parameter): PreparedParameter {
  const name = argumentName(key);
  return {
    key,
    name,
    parameter,
    isScalar: parameter.kind === "number" || parameter.kind === "choice" || parameter.kind === "text",
    isOptional: parameter.optional === true,
    standIn: "default" in parameter ? parameter.default : undefined,
    readCell: { metric: cellReader(name, parameter, "metric"), us: cellReader(name, parameter, "us") },
  };
}

function cellReader(name: string, parameter: Parameter, units: UnitSystem): (typed: unknown) => unknown {
  if (parameter.kind === "number") return numberReader(name, parameter, units);
  if (parameter.kind === "choice") return (typed) => readChoice(name, typed, parameter);
  return parameter.kind === "text" ? readText : () => missing;
}

/** A table, a list, a block or cells as typed. */
export function readWhole({ name, parameter }: PreparedParameter, range: Matrix | undefined, units: UnitSystem): unknown {
  if (range === undefined) return missing;
  if (parameter.kind === "list") return readList(name, range, parameter, units);
  if (parameter.kind === "block") return readBlock(name, range, parameter, units);
  if (parameter.kind === "cells") return readCells(name, range);
  return parameter.kind === "table" ? readTable(name, range, parameter, units) : missing;
}

function context(units: UnitSystem): Context {
  return { units, show: (name, coreValue) => quantity(name).fromCore(coreValue, units) };
}
