import { spawnSync } from "node:child_process";
import { describe, expect, it } from "vitest";
import { findUnits } from "../../src/build/find-programs.mjs";
import { callScalar } from "../../src/functions/call";
import { quantities, quantity, type QuantityName } from "../../src/functions/quantities";
import { functionNamed } from "../../src/functions/registry";

/**
 * GNU units by A. Mariano: its definitions are kept by others, from NIST SP 811 and the sources that they name. They
 * carry Table 114 of NBS Circular 440 as the unit "brix", an apparent density for 0.99717 g/cm³ of water.
 */
const units = findUnits();
if (units === undefined) console.warn("Skipped: the comparisons with GNU units, which is not here (Debian: apt install units).");

/** Each pair is a quantity and the unit that it is wanted in; one start of the program for all. */
function converted(pairs: readonly (readonly [string, string])[]): number[] {
  const { stdout, stderr, status } = spawnSync(units ?? "", ["--terse", "--output-format", "%.15g"], {
    input: pairs.flat().join("\n") + "\n",
    encoding: "utf8",
  });
  if (status !== 0) throw new Error(`units ended with ${status}: ${stdout}${stderr}`);
  const answers = stdout.trim().split("\n").map(Number);
  if (answers.length !== pairs.length || answers.some(Number.isNaN)) throw new Error(`units did not understand a line: ${stdout}`);
  return answers;
}

/** What each unit of ours is in the words of the program (its "USgallon" is built on the survey inch and not meant); a temperature is a function there. */
const names: Partial<Record<QuantityName, { readonly us: string; readonly metric: string }>> = {
  volume: { us: "gallon", metric: "L" },
  bottleVolume: { us: "floz", metric: "mL" },
  doseVolume: { us: "floz", metric: "mL" },
  dosePerVolume: { us: "floz/gallon", metric: "mL/L" },
  mass: { us: "lb", metric: "kg" },
  smallMass: { us: "oz", metric: "g" },
  pressure: { us: "psi", metric: "bar" },
  altitude: { us: "ft", metric: "m" },
  flow: { us: "gallon/min", metric: "L/min" },
  volumePerHour: { us: "gallon/hour", metric: "L/hour" },
  absorption: { us: "gallon/lb", metric: "L/kg" },
  points: { us: "gallon/lb", metric: "L/kg" },
  energy: { us: "kcal", metric: "kJ" },
  length: { us: "ft", metric: "m" },
  innerDiameter: { us: "inch", metric: "mm" },
  hopRate: { us: "oz/gallon", metric: "g/L" },
};

describe("the two unit systems", () => {
  it("are compared wherever they differ", () => {
    const differ = (Object.keys(quantities) as QuantityName[]).filter((name) => quantity(name).unit.us !== quantity(name).unit.metric);
    expect(differ.filter((name) => !(name in names))).toEqual(["temperature"]);
  });
});

describe.skipIf(units === undefined)("against GNU units", () => {
  it("convert as it does, to twelve digits", () => {
    const entries = Object.entries(names) as [QuantityName, { us: string; metric: string }][];
    const factors = converted(entries.map(([, { us, metric }]) => [us, metric]));
    entries.forEach(([name], index) => {
      const ours = quantity(name).toCore(1, "us") / quantity(name).toCore(1, "metric");
      expect(Math.abs(ours / (factors[index] ?? NaN) - 1), `${name}: ${ours} for ${factors[index]}`).toBeLessThan(1e-12);
    });
  });

  it("convert temperatures as it does", () => {
    const fahrenheit = [-40, 32, 68, 158, 212];
    const celsius = converted(fahrenheit.map((value) => [`tempF(${value})`, "tempC"]));
    fahrenheit.forEach((value, index) => expect(quantity("temperature").toCore(value, "us")).toBeCloseTo(celsius[index] ?? NaN, 9));
  });

  it("give the sugar table of NBS Circular 440 both ways, at every whole degree", () => {
    const degrees = Array.from({ length: 40 }, (_, index) => index + 1);
    const relative = converted(degrees.map((brix) => [`brix(${brix})`, "0.99717 g/cm^3"]));
    degrees.forEach((brix, index) => {
      const table = relative[index] ?? NaN;
      // The table is printed to 1e-5; our cubic misses it by 2e-5 at most.
      expect(Math.abs(Number(callScalar(functionNamed("WORT.SG"), [brix])) - table), `${brix} °Bx`).toBeLessThan(3e-5);
      if (table <= 1.17875)
        expect(Math.abs(Number(callScalar(functionNamed("WORT.PLATO"), [table])) - brix), `${brix} °Bx`).toBeLessThan(0.0065);
    });
  });
});
