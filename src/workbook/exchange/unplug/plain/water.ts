import { calciumCarbonatePerCalcium, calciumCarbonatePerMagnesium, mashLoss } from "../../../../core/water/alkalinity";
import { chlorineMolarMass, excess, metabisulfites } from "../../../../core/water/dechlorinate";
import { maltHeatAgainstWater } from "../../../../core/water/mash";
import { waterKgPerL20C } from "../../../../core/wort/density";
import { carbonOfTapWater, chalkSaturation, firstStep, tapPh } from "../../../../core/water/carbonate";
import { acids, acidMolPerL, calciumCarbonateMgPerMeq, mashPh, type AcidName } from "../../../../core/water/acid";
import { waterBoilsAtC } from "../../../../core/water/boiling";
import { unitsPerMeq, waterUnits } from "../../../../core/water/hardness";
import { acceptable, explained, meqPerMg } from "../../../../core/water/ion-balance";
import { ionNames, molar, salts, withSalts, pureWater, type SaltName } from "../../../../core/water/ions";
import { ionLabel } from "../../../../functions/water/ion-rows";
import { massOfWortKg, strongestKgPerL, waterKgPerL } from "../../../../core/wort/solution";
import { num, powersText, product, quote } from "./formula-parts";
import { densityOverWaterText } from "./gravity-and-extract";
import type { PlainArguments } from "./plain-arguments";
import { NoPlainForm } from "./no-plain-form";
import type { PlainForm, Place, ValueOnly } from "./plain-form";
import { polynomialText } from "./polynomial";

const chilled = (x: PlainArguments): string => `(${x.core("intoFermenter")}+${x.core("kettleLoss")})`;
const evaporated = (x: PlainArguments): string => `${x.core("evaporation")}*${x.core("boilMinutes")}/60`;

/** Sums over the malt bill, kg; undefined where none is given. */
interface Bill {
  readonly grain: string;
  readonly extractOfGrain: string;
  readonly added: string;
  readonly extract: string;
}

function billOf(x: PlainArguments): Bill | undefined {
  if (x.operand("fermentables").kind === "omitted") return undefined;
  const column = (name: string): string => x.column("fermentables", name) ?? "";
  const sum = (words: readonly string[], ...columns: string[]): string =>
    product(
      `SUMPRODUCT(${[words.map((word) => `(${column("handling")}="${word}")`).join("+"), ...columns.map(column)].join(",")})`,
      x.scale("mass"),
    );
  const [grain, added] = [
    ["mash", "steep"],
    ["extract", "sugar"],
  ] as const;
  const extractOfGrain = `${sum(grain, "mass", "yield")}*${x.core("efficiency")}/10000`;
  return {
    grain: sum(grain, "mass"),
    extractOfGrain,
    added: sum(added, "mass"),
    extract: `(${extractOfGrain}+${sum(added, "mass", "yield")}/100)`,
  };
}

/** kg in a litre of a sugar solution at 20 °C, from the kg of sugar in it: the density equation turned round, to 1e-8. */
const kgPerLText = (sugarKgPerL: string): string =>
  polynomialText((concentration) => massOfWortKg(1, concentration) ?? NaN, { from: 0, to: strongestKgPerL, degree: 9 }, sugarKgPerL);

const volumeText = (mass: string, extract: string): string =>
  `${mass}/(${num(waterKgPerL)}*(${densityOverWaterText(`(${extract}/${mass})`)}))`;

const massBeforeBoil = (x: PlainArguments, { extract }: Bill): string =>
  `(${chilled(x)}*${kgPerLText(`${extract}/${chilled(x)}`)}+${evaporated(x)}*${num(waterKgPerL)})`;
const massOffTheGrain = (x: PlainArguments, bill: Bill): string => `(${massBeforeBoil(x, bill)}-${bill.added})`;

function beforeBoil(x: PlainArguments): string {
  const bill = billOf(x);
  return bill ? volumeText(massBeforeBoil(x, bill), bill.extract) : `${chilled(x)}+${evaporated(x)}`;
}

function collect(x: PlainArguments): string {
  const bill = billOf(x);
  const [grain, lost] = [x.core("grainMass"), `*${x.core("absorption")}+${x.core("deadSpace")}`];
  if (!bill) return `${beforeBoil(x)}+${grain}${lost}`;
  return `${volumeText(massOffTheGrain(x, bill), bill.extractOfGrain)}+IF(${grain}>0,${grain},${bill.grain})${lost}`;
}

/** Whether the malt bill leaves room for water, as `core/water/budget.ts` asks. */
function roomForWater(x: PlainArguments): string[] {
  const bill = billOf(x);
  return bill ? [`${bill.extract}<=${num(strongestKgPerL)}*${chilled(x)}`, `${massOffTheGrain(x, bill)}>2*${bill.extractOfGrain}`] : [];
}

/** What the five rows of the budget say and hold. */
const budgetRows: readonly [string, (x: PlainArguments) => string][] = [
  ["collect", collect],
  ["before the boil", beforeBoil],
  ["after the boil, hot", (x) => `${chilled(x)}/(1-${x.core("shrinkage")}/100)`],
  ["after chilling", chilled],
  ["into the fermenter", (x) => x.core("intoFermenter")],
];

const strike = (x: PlainArguments): string => {
  const [grain, water, target] = [x.core("grainMass"), x.core("waterVolume"), x.core("target")];
  return `${target}+${num(maltHeatAgainstWater)}*${grain}*(${target}-${x.core("grainTemperature")})/(${water}*${num(waterKgPerL20C)})`;
};

const sixRows = () => ({ rows: 6, columns: 2 });

/** mg of an ion in a litre from a gram of a salt in it. */
const perGram = (salt: SaltName, ion: number): number => withSalts(pureWater, [{ salt, massG: 1 }], 1)[ionNames[ion] ?? "calcium"];

function addedIons(x: PlainArguments, ion: number): string {
  const [names, grams] = [x.column("salts", "salt") ?? "", x.column("salts", "mass") ?? ""];
  const parts = (Object.keys(salts) as SaltName[])
    .filter((salt) => perGram(salt, ion) > 0)
    .map((salt) => `${num(perGram(salt, ion))}*SUMPRODUCT(--(${names}=${quote(salt)}),${grams})`);
  return `(${parts.join("+")})/${x.core("volume")}`;
}

/** Whether a water has a cell for each ion, as the call asks: six in a line, a heading not counted. */
function fits(x: PlainArguments, key: string): boolean {
  const { rows, columns, heading } = x.range(key);
  return Math.min(rows, columns) === 1 && rows * columns - Number(heading) === ionNames.length;
}

function ionOf(x: PlainArguments, key: string, ion: number): string {
  if (!fits(x, key)) return "0";
  const water = x.range(key);
  return `N(${water.rows > 1 ? water.cell(ion, 0) : water.cell(0, ion)})`;
}

const baseFits = (x: PlainArguments): boolean => x.operand("base").kind === "omitted" || fits(x, "base");
const baseIon = (x: PlainArguments, ion: number): string => (x.operand("base").kind === "omitted" ? "0" : ionOf(x, "base", ion));

const perMeq = Object.fromEntries(waterUnits.map((unit) => [unit, num(unitsPerMeq[unit])]));

/** Milliequivalents of the ions of one sign. */
const charges = (x: PlainArguments, sign: 1 | -1): string =>
  `(${ionNames.flatMap((ion, index) => (sign * meqPerMg(ion) > 0 ? [`${ionOf(x, "profile", index)}*${num(Math.abs(meqPerMg(ion)))}`] : [])).join("+")})`;

const differencePercent = (x: PlainArguments): string => {
  const [cations, anions] = [charges(x, 1), charges(x, -1)];
  return `IF(${cations}+${anions}=0,0,100*(${cations}-${anions})/(${cations}+${anions}))`;
};

/** What the four rows of the balance say and hold: the sums of `core/water/ion-balance.ts`. */
const balanceRows: readonly [string, (x: PlainArguments) => string][] = [
  ["cations (meq/L)", (x) => charges(x, 1)],
  ["anions (meq/L)", (x) => charges(x, -1)],
  ["difference (%)", differencePercent],
  [
    "verdict",
    (x) => {
      const [anions, meq, percent] = [charges(x, -1), `ABS(${charges(x, 1)}-${charges(x, -1)})`, `ABS(${differencePercent(x)})`];
      const { fewAnions, fewMeq, middleAnions, middlePercent, manyPercent } = acceptable;
      const good = `IF(${anions}<=${fewAnions},${meq}<=${num(fewMeq)},${percent}<=IF(${anions}<=${middleAnions},${middlePercent},${manyPercent}))`;
      return `IF(${good},"balanced",IF(OR(${meq}<=${num(explained.meq)},${percent}<=${explained.percent}),"ions missing","cannot be right"))`;
    },
  ],
];

/** No chalk, or no more than water in air holds: `requireChalkDissolves` of the core. */
function chalkDissolves(x: PlainArguments): string {
  const chalk = `SUMPRODUCT(--(${x.column("salts", "salt") ?? ""}="chalk"),${x.column("salts", "mass") ?? ""})`;
  const [calcium, bicarbonate] = [0, 5].map((ion) => `(${baseIon(x, ion)}+${addedIons(x, ion)})`);
  return `OR(${chalk}=0,${calcium}/${num(1000 * molar.calcium)}*(${bicarbonate}/${num(1000 * molar.bicarbonate)})^2<=${num(chalkSaturation)})`;
}

/** Equivalents in a millilitre of the acid. */
function acidText(x: PlainArguments, name: AcidName): string {
  const w = `(${x.core("strength")}/100)`;
  const density = `(${powersText(acids[name].densityPowers, w)})`;
  const molPerL = `1000*${density}*${w}/${num(acids[name].molarMass)}`;
  const usual = num(acidMolPerL(name, acids[name].usualPercent));
  const given = x.given("strength");
  const asked = given === false ? usual : given === true ? molPerL : `IF(${given},${molPerL},${usual})`;
  return `${equivalentsText(name, hydrogenText(x))}*${asked}`;
}

const molPerL = (x: PlainArguments, key: string): string => `${x.core(key)}/${num(1000 * calciumCarbonateMgPerMeq)}`;

/** Alkalinity that stays, mol/L: the target, or what is there at the mash's pH. The sums of `core/water/carbonate.ts`. */
const leftText = (x: PlainArguments): string => {
  const hydrogen = 10 ** -mashPh;
  return `MAX(${molPerL(x, "targetAlkalinity")},${molPerL(x, "alkalinity")}*${num((carbonOfTapWater(1) * firstStep) / (hydrogen + firstStep))}-${num(hydrogen)})`;
};

function hydrogenText(x: PlainArguments): string {
  const half = `(${leftText(x)}+${num(firstStep)})/2`;
  return `MAX(${num(10 ** -tapPh)},SQRT((${half})^2+${num(firstStep)}*(${num(carbonOfTapWater(1))}*${molPerL(x, "alkalinity")}-${leftText(x)}))-${half})`;
}

/** Hydrogen ions from a molecule; the third step of phosphoric acid is far above the pH of any water. */
function equivalentsText(name: AcidName, hydrogen: string): string {
  const [one = 0, two] = acids[name].pKa.map((exponent) => 10 ** -exponent);
  if (two === undefined) return `${num(one)}/(${hydrogen}+${num(one)})`;
  return `(${num(one)}*${hydrogen}+${num(2 * one * two)})/(${hydrogen}^2+${num(one)}*${hydrogen}+${num(one * two)})`;
}

export const waterForms = {
  "WATER.BUDGET": {
    size: () => ({ rows: 5, columns: 2 }),
    holds: roomForWater,
    sum: (x, { row, column }: Place) => {
      const [label, volume] = budgetRows[row] ?? budgetRows[0]!;
      return column === 0 ? quote(label) : x.show("volume", volume(x));
    },
  },
  "WATER.BOILS": { sum: (x) => polynomialText(waterBoilsAtC, { from: -600, to: 5100, degree: 8 }, x.core("altitude")) },
  "WATER.STRIKE": { sum: strike, holds: (x) => [`${strike(x)}<=100`] },
  "WATER.STEP": {
    holds: (x) => [`${x.core("target")}>=${x.core("from")}`, `${x.core("additionTemperature")}>${x.core("target")}`],
    sum: (x) =>
      `(${num(maltHeatAgainstWater)}*${x.core("grainMass")}+${x.core("waterVolume")}*${num(waterKgPerL20C)})*(${x.core("target")}-${x.core("from")})/(${x.core("additionTemperature")}-${x.core("target")})/${num(waterKgPerL20C)}`,
  },
  "WATER.IONS": {
    size: sixRows,
    holds: (x) => (baseFits(x) ? [chalkDissolves(x)] : ["FALSE"]),
    sum: (x, { row, column }) => (column === 0 ? quote(ionLabel(ionNames[row] ?? "calcium")) : `${baseIon(x, row)}+${addedIons(x, row)}`),
  },
  "WATER.BLEND": {
    size: sixRows,
    holds: (x) => {
      const [shares, profiles] = [x.range("shares"), x.range("profiles")];
      if (shares.columns !== 1 || shares.rows - Number(shares.heading) !== profiles.rows - Number(profiles.heading))
        throw new NoPlainForm("shares and profiles do not stand side by side");
      return [];
    },
    sum: (x, { row, column }) =>
      column === 0
        ? quote(ionLabel(ionNames[row] ?? "calcium"))
        : `SUMPRODUCT(${x.range("shares").all},${x.column("profiles", ionNames[row] ?? "") ?? ""})/SUM(${x.range("shares").all})`,
  },
  "WATER.TARGET": { value: "it looks for the nearest of all mixtures" },
  "WATER.CONVERT": { sum: (x) => `${x.core("amount")}*${x.lookUp("to", perMeq)}/${x.lookUp("from", perMeq)}` },
  "WATER.BALANCE": {
    size: () => ({ rows: 4, columns: 2 }),
    holds: (x) => (fits(x, "profile") ? [] : ["FALSE"]),
    sum: (x, { row, column }) => {
      const [label, amount] = balanceRows[row] ?? balanceRows[0]!;
      return column === 0 ? quote(label) : amount(x);
    },
  },
  "WATER.ALKALINITY": {
    sum: (x) =>
      `${x.core("alkalinity")}-${num(calciumCarbonatePerCalcium)}*${x.core("calcium")}/${num(mashLoss.calcium)}-${num(calciumCarbonatePerMagnesium)}*${x.core("magnesium")}/${num(mashLoss.magnesium)}`,
  },
  "WATER.ACID": {
    holds: (x) => [`${x.core("targetAlkalinity")}<=${x.core("alkalinity")}`],
    sum: (x) =>
      `1000*${x.core("volume")}*(${molPerL(x, "alkalinity")}-${leftText(x)})/(${x.choice("acid", { lactic: acidText(x, "lactic"), phosphoric: acidText(x, "phosphoric") })})`,
  },
  "WATER.DECHLORINATE": {
    sum: (x) =>
      `${x.core("volume")}*${x.core("chlorine")}*${num(excess)}*${x.choice("compound", { potassium: num(metabisulfites.potassium), sodium: num(metabisulfites.sodium) })}/(2*${num(chlorineMolarMass)})`,
  },
} satisfies Record<string, PlainForm | ValueOnly>;
