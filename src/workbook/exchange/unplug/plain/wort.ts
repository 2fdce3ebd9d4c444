import { gravityLimits } from "../../../../core/wort/gravity-limits";
import { pureSugarPointsLPerKg } from "../../../../core/wort/extract-potential";
import { colourFit, maltColourUnitsPerKgLovibondPerL, mostSrm } from "../../../../core/wort/colour";
import { ebcPerAbsorbance, lovibondLine, srmPerAbsorbance } from "../../../../core/wort/colour-scales";
import { sugarSolutionDensityKgPerM3, waterDensityKgPerM3, waterDivisor, waterKgPerL20C, waterPowers } from "../../../../core/wort/density";
import { glassExpansionPerK } from "../../../../core/wort/hydrometer";
import { platoPowers } from "../../../../core/wort/plato";
import { concentrationOfGravity, gravityOfConcentration } from "../../../../core/wort/solution";
import { bisect } from "../../../../core/wort/bisect";
import { num, powersText, product } from "./formula-parts";
import { densityOverWaterText, extractText, gravityText, platoText } from "./gravity-and-extract";
import type { PlainArguments } from "./plain-arguments";
import { NoPlainForm } from "./no-plain-form";
import type { PlainForm } from "./plain-form";
import { polynomialText, surfaceText } from "./polynomial";

const columnOf = (x: PlainArguments, column: string, table = "fermentables"): string => {
  const text = x.column(table, column);
  if (text === undefined) throw new NoPlainForm(`the range has no column for ${column}`);
  return text;
};

/** Extract of the malt bill, kg: what the grain holds, and what is dissolved already. */
function extractOf(x: PlainArguments, table = "fermentables"): { grain: string; dissolved: string } {
  const handling = columnOf(x, "handling", table);
  const sum = (...words: string[]): string =>
    product(
      `SUMPRODUCT(${words.map((word) => `(${handling}="${word}")`).join("+")},${columnOf(x, "mass", table)},${columnOf(x, "yield", table)})`,
      "0.01",
      x.scale("mass"),
    );
  return { grain: sum("mash", "steep"), dissolved: sum("extract", "sugar") };
}

/** kg of extract in a litre of the wort. */
const concentration = (x: PlainArguments): string => {
  const { grain, dissolved } = extractOf(x);
  return `(${grain}*${x.core("efficiency")}/100+${dissolved})/${x.core("volume")}`;
};

/** The wort of 1.200, where the functions end, with room for what they allow. */
const strongest = concentrationOfGravity(gravityLimits.atMost + 1e-9);

const gravityOf = (concentrationText: string): string =>
  polynomialText(gravityOfConcentration, { from: 0, to: 0.56, degree: 8 }, `(${concentrationText})`);
const expectedGravity = (x: PlainArguments): string => gravityOf(concentration(x));

/** kg of extract in a litre in the two stretches of a boil, and how long the second one is: see `core/wort/kettle.ts`. */
function kettle(x: PlainArguments): { first: string; second: string; share: string } {
  const [before, after] = [x.core("before"), x.core("after")];
  const hasLate = x.operand("late").kind !== "omitted";
  const kg = (table: string): string => {
    const { grain, dissolved } = extractOf(x, table);
    return `${grain}*${x.core("efficiency")}/100+${dissolved}`;
  };
  const share = hasLate ? `(${x.core("lateMinutes")}/${x.core("boilMinutes")}*(${columnSum(x)}>0))` : "0";
  const volume = (at: string): string => `(${before}+${at}*(${after}-${before}))`;
  const early = kg("fermentables");
  return {
    first: `(${early})/${volume(`(1-${share})/2`)}`,
    second: hasLate ? `(${early}+${kg("late")})/${volume(`(1-${share}/2)`)}` : "0",
    share,
  };
}
const columnSum = (x: PlainArguments): string => `SUM(${columnOf(x, "mass", "late")})`;

const efficiency = (x: PlainArguments): string => {
  const { grain, dissolved } = extractOf(x);
  return `100*(${fromGrain(x)}-${dissolved})/(${grain})`;
};

/** kg of extract in the whole wort. */
const fromGrain = (x: PlainArguments): string => `${extractText(x.core("gravity"))}*${x.core("volume")}`;

/** °L from EBC: (EBC × 12.7 / 25 + 0.76) / 1.3546, and none where the malt gives no colour. */
function maltColourUnits(x: PlainArguments): string {
  const [mass, colour] = [columnOf(x, "mass"), columnOf(x, "colour")];
  return x.choice("scale", {
    SRM: `SUMPRODUCT(${mass},${colour})`,
    EBC: `(SUMPRODUCT(${mass},${colour})*${num(srmPerAbsorbance)}/${num(ebcPerAbsorbance)}+${num(lovibondLine.above)}*SUMPRODUCT(${mass},ISNUMBER(${colour})*(${colour}<>0)))/${num(lovibondLine.slope)}`,
  });
}

const srm = (x: PlainArguments): string =>
  `${num(colourFit.factor)}*(${product(maltColourUnits(x), x.scale("mass"))}*${num(maltColourUnitsPerKgLovibondPerL)}/${x.core("volume")})^${num(colourFit.power)}`;

/** Density of water, kg/L: the equation of `core/wort/density.ts`. */
const waterText = (t: string): string => `((${powersText(waterPowers, t)})/(1+${num(waterDivisor)}*${t})/1000)`;

/**
 * Mass fraction of sugar whose solution is so much denser than water (kg/L) at a temperature: the ICUMSA equation turned
 * round, to 5e-9.
 */
const sugarText = (overWater: string, celsius: string): string =>
  surfaceText(
    (kgPerL, t) => bisect((w) => sugarSolutionDensityKgPerM3(w, t) - waterDensityKgPerM3(t) - 1000 * kgPerL, -0.2, 0.7),
    { from: -0.035, to: 0.235, degree: 9 },
    { from: 0, to: 71, degree: 7 },
    overWater,
    celsius,
  );

/** The density that the spindle shows, kg/L, by the way its scale is marked; then the glass's own expansion. */
function sampleDensity(x: PlainArguments, calibration: string): string {
  return `${calibration}*(1-${num(glassExpansionPerK)}*(${x.core("sampleTemperature")}-${x.core("calibratedAt")}))`;
}

const solutionText = (plato: string, celsius: string): string =>
  surfaceText(
    (p, t) => sugarSolutionDensityKgPerM3(p / 100, t) / 1000,
    { from: -6, to: 41, degree: 6 },
    { from: 9, to: 31, degree: 6 },
    plato,
    celsius,
  );

const sugar = (x: PlainArguments, calibration: string): string =>
  sugarText(`(${sampleDensity(x, calibration)}-${waterText(x.core("sampleTemperature"))})`, x.core("sampleTemperature"));

const hydrometer: PlainForm = {
  holds: (x) => [
    x.choice("scale", {
      SG: `AND(${x.core("reading")}>=${gravityLimits.atLeast},${x.core("reading")}<=${gravityLimits.atMost})`,
      P: `AND(${x.core("reading")}>=-5,${x.core("reading")}<=40)`,
    }),
  ],
  sum: (x) =>
    x.choice("scale", {
      SG: densityOverWaterText(sugar(x, `${x.core("reading")}*${waterText(x.core("calibratedAt"))}`)),
      P: gravityText(`100*${sugar(x, solutionText(x.core("reading"), x.core("calibratedAt")))}`),
    }),
};

const rises = (x: PlainArguments): string => `${x.core("target")}>=${x.core("gravity")}`;
const sugarPerLitre = (gravity: string): string => `${gravity}*${platoText(gravity)}`;

/** As `core/wort/bill.ts`: the share of a row times the extract wanted over what all shares give. */
const bill: PlainForm = {
  size: (x) => ({ rows: x.range("shares").rows - Number(x.range("shares").heading), columns: 1 }),
  sum: (x, { row }) => {
    const share = x.cell("shares", "share", row) ?? "";
    const [all, yields, handling] = ["share", "yield", "handling"].map((name) => x.column("shares", name) ?? "");
    const sum = (...words: string[]): string => `SUMPRODUCT(${words.map((word) => `(${handling}="${word}")`).join("+")},${all},${yields})`;
    const perShare = `(${sum("mash", "steep")}*${x.core("efficiency")}/100+${sum("extract", "sugar")})`;
    return `IF(N(${share})=0,"",${x.show("mass", `${share}*100*${extractText(x.core("target"))}*${x.core("volume")}/${perShare}`)})`;
  },
};

export const wortForms = {
  "WORT.SG": { sum: (x) => gravityText(x.core("plato")) },
  "WORT.PLATO": { sum: (x) => platoText(x.core("gravity")) },
  "WORT.HYDROMETER": hydrometer,
  "WORT.REFRACTOMETER": { sum: (x) => gravityText(`${x.core("brix")}/${x.core("wortCorrection")}`) },
  "WORT.GRAVITY": { sum: expectedGravity, holds: (x) => [`${concentration(x)}<=${num(strongest)}`] },
  "WORT.COLOUR": {
    sum: (x) => x.choice("scale", { SRM: srm(x), EBC: `${srm(x)}*${num(ebcPerAbsorbance)}/${num(srmPerAbsorbance)}` }),
    holds: (x) => [`${srm(x)}<=${num(mostSrm)}`],
  },
  "WORT.MIX": {
    // Σ V SG P with P multiplied out in powers of SG: SUMPRODUCT passes over blank texts only between its commas.
    sum: (x) => {
      const [v, g] = [x.range("volumes").all, x.range("gravities").all];
      const [first, second, third] = platoPowers;
      const sums = [second - first - third, first - 2 * second + 3 * third, second - 3 * third, third].map(
        (factor, power) => `${num(factor)}*SUMPRODUCT(${[v, g, ...Array<string>(power).fill(g)].join(",")})`,
      );
      return gravityText(`((${sums.join("+")})/SUMPRODUCT(${v},${g}))`);
    },
    holds: (x) => {
      const [v, g] = [x.range("volumes"), x.range("gravities")];
      if (v.rows !== g.rows || v.columns !== g.columns || v.heading !== g.heading)
        throw new NoPlainForm("volumes and gravities do not stand side by side");
      return [`SUMPRODUCT(ABS(ISNUMBER(${v.all})*(${v.all}<>0)-ISNUMBER(${g.all})*(${g.all}<>0)))=0`];
    },
  },
  "WORT.THIN": {
    sum: (x) => `${x.core("volume")}*${x.core("gravity")}*(${platoText(x.core("gravity"))}/${platoText(x.core("target"))}-1)`,
    holds: (x) => [`${x.core("target")}<=${x.core("gravity")}`, `${x.core("target")}>1`],
  },
  "WORT.REDUCE": {
    sum: (x) => `${x.core("volume")}*(1-${sugarPerLitre(x.core("gravity"))}/(${sugarPerLitre(x.core("target"))}))`,
    holds: (x) => [rises(x), `${x.core("gravity")}>1`],
  },
  "WORT.ENRICH": {
    sum: (x) => {
      const [gravity, target] = [x.core("gravity"), platoText(x.core("target"))];
      return `${x.core("volume")}*${gravity}*${num(waterKgPerL20C)}*(${target}-${platoText(gravity)})/(${x.core("yield")}-${target})`;
    },
    holds: (x) => [rises(x), `${x.core("yield")}>${platoText(x.core("target"))}`],
  },
  "WORT.BILL": bill,
  "WORT.KETTLE": {
    holds: (x) => {
      const { first, second, share } = kettle(x);
      return [
        `${x.core("after")}<=${x.core("before")}*(1+1E-9)`,
        `${x.core("lateMinutes")}<=${x.core("boilMinutes")}`,
        `${first}<=${num(strongest)}`,
        ...(share === "0" ? [] : [`(${share}>0)*${second}<=${num(strongest)}`]),
      ];
    },
    sum: (x) => {
      const { first, second, share } = kettle(x);
      return share === "0" ? gravityOf(first) : `(1-${share})*${gravityOf(first)}+${share}*${gravityOf(second)}`;
    },
  },
  "WORT.EFFICIENCY": {
    sum: efficiency,
    holds: (x) => [`${extractOf(x).grain}>0`, `${fromGrain(x)}-${extractOf(x).dissolved}>=-0.00000001`, `${efficiency(x)}<=100.000001`],
  },
  "WORT.YIELD": { sum: (x) => `100*${x.core("points")}/${num(pureSugarPointsLPerKg)}` },
  "WORT.POINTS": { sum: (x) => `${x.core("yield")}/100*${num(pureSugarPointsLPerKg)}` },
} satisfies Record<string, PlainForm>;
