import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { BlockParameter, Column, ListParameter } from "../../src/functions/describe";
import { registry } from "../../src/functions/registry";
import { placesOf } from "../support/registry-probe";

/**
 * What every argument takes: limits, what its source covers, what a blank cell means, and the default, in the core's
 * units. Other tests read these from the descriptions themselves and would follow any slip; this list stands beside
 * them. Sheets out there count on it: change a line only on purpose. Typed from the descriptions, it guards against slips alone.
 */
const listed = readFileSync(new URL("arguments.txt", import.meta.url), "utf8")
  .trim()
  .split("\n");

function textOf(name: string, parameter: Column | ListParameter | BlockParameter): string[] {
  if (parameter.kind === "text") return [];
  const fallback =
    "default" in parameter && parameter.default !== undefined
      ? [`default ${parameter.default}`]
      : parameter.optional === true
        ? ["may be left out"]
        : [];
  if (parameter.kind === "choice") return [[name, ...fallback].join("; ")];
  const { atLeast, above, atMost, below } = parameter.limits;
  const lower = atLeast !== undefined ? `from ${atLeast}` : `above ${above}`;
  const upper = atMost !== undefined ? `to ${atMost}` : `below ${below}`;
  const covered = parameter.kind === "number" && parameter.covered ? [`covered ${parameter.covered.from} to ${parameter.covered.to}`] : [];
  const slip = parameter.kind === "number" && parameter.slip ? [`not ${parameter.slip.from} to below ${parameter.slip.below}`] : [];
  return [
    [
      name,
      `${lower} ${upper}`,
      ...slip,
      ...covered,
      parameter.blank === "zero" ? "blank is 0" : parameter.blank === "waits" ? "0 is a value, blank waits" : "blank waits",
      ...(parameter.kind === "number" && parameter.zero === "asked" ? ["0 °C is asked about"] : []),
      ...fallback,
    ].join("; "),
  ];
}

describe("the arguments of all functions", () => {
  it("take what arguments.txt says", () => {
    const described = registry.flatMap((descriptor) =>
      placesOf(descriptor).flatMap(({ name, parameter }) => {
        if (parameter.kind === "cells") return [];
        const columns: [string, Column | ListParameter | BlockParameter][] =
          parameter.kind === "table"
            ? Object.entries(parameter.columns).map(([key, column]) => [`${name}.${key}`, column])
            : [[name, parameter]];
        return columns.flatMap(([label, column]) => textOf(`${descriptor.id} ${label}`, column));
      }),
    );
    expect(described).toEqual(listed);
    expect(listed.length).toBeGreaterThan(200);
  });
});
