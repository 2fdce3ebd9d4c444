import { call, callScalar } from "./call";
import { CellError } from "./cell-error";
import type { AnyDescriptor, Example } from "./describe";
import { quantity, isoDay, type QuantityName, type UnitSystem } from "./quantities";

/** What the cells show when an example is typed: worked out by the function itself, not copied from its description. */
export function exampleAnswer(descriptor: AnyDescriptor, example: Example): string[][] {
  const { result } = descriptor;
  const answer = call(descriptor, [...example.arguments]);
  const name: QuantityName = result.kind === "number" ? result.quantity : "number";
  return answer.map((row) =>
    row.map((cell, column) =>
      cell instanceof CellError
        ? cell.code
        : typeof cell === "string"
          ? cell
          : shownNumber(cell, name, result.kind === "grid" && result.columns[column] === "time"),
    ),
  );
}

/** The unit beside the answer of an example; empty where it answers with words or several cells. */
export function exampleUnit({ result, parameters }: AnyDescriptor, { arguments: typed }: Example): string {
  const unitsAt = Object.keys(parameters as object).indexOf("units");
  const system: UnitSystem = typed[unitsAt] === "us" ? "us" : "metric";
  return result.kind === "number" && result.quantity !== "gravity" && result.quantity !== "date"
    ? quantity(result.quantity).unit[system]
    : "";
}

/** Where an example's value comes from, with the value itself where it is not what the cell shows, rounded. */
export function exampleOrigin(descriptor: AnyDescriptor, example: Example): string {
  const { value, from } = example;
  const answer = callScalar(descriptor, [...example.arguments]);
  if (typeof value !== "number" || typeof answer !== "number") return from;
  const decimals = String(value).split(".")[1]?.length ?? 0;
  return Number(answer.toFixed(decimals)) === value ? from : `compare ${value}: ${from}`;
}

function shownNumber(value: number, name: QuantityName, isTime: boolean): string {
  if (isTime) return clock(value);
  if (name === "date") return `${value}, as a date ${isoDay(value)}`;
  // No digit that a reading could not have, but all that tell gravities apart.
  return String(Number(value.toPrecision(value >= 0.9 && value < 1.3 ? 6 : 5)));
}

/** A day number's time of day, with its date where it has one. */
function clock(dayNumber: number): string {
  const minutes = Math.round((dayNumber % 1) * 1440);
  const time = `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, "0")}`;
  return dayNumber < 1 ? time : `${isoDay(dayNumber)} ${time}`;
}
