import { carbonOfTapWater, chalkSaturation, firstStep, tapPh } from "../../../core/water/carbonate";
import { acids, acidMolPerL, mashPh, type AcidName } from "../../../core/water/acid";
import { waterBoilsAtC } from "../../../core/water/boiling";
import { ionNames, salts, withSalts, pureWater, type SaltName } from "../../../core/water/ions";
import { ionLabel } from "../../../functions/water/ion-rows";
import { num, quote } from "./formula-parts";
import type { PlainArguments } from "./plain-arguments";
import { NoPlainForm, type PlainForm, type Place } from "./plain-form";
import { polynomialText } from "./polynomial";

const chilled = (x: PlainArguments): string => `(${x.core("intoFermenter")}+${x.core("kettleLoss")})`;
const beforeBoil = (x: PlainArguments): string => `${chilled(x)}+${x.core("evaporation")}*${x.core("boilMinutes")}/60`;

/** What the five rows of the budget say and hold. */
const budgetRows: readonly [string, (x: PlainArguments) => string][] = [
  ["collect", (x) => `${beforeBoil(x)}+${x.core("grainMass")}*${x.core("absorption")}`],
  ["before the boil", beforeBoil],
  ["after the boil, hot", (x) => `${chilled(x)}/(1-${x.core("shrinkage")}/100)`],
  ["after chilling", chilled],
  ["into the fermenter", (x) => x.core("intoFermenter")],
];

const strike = (x: PlainArguments): string => {
  const [grain, water, target] = [x.core("grainMass"), x.core("waterVolume"), x.core("target")];
  return `${target}+0.4*${grain}*(${target}-${x.core("grainTemperature")})/(${water}*0.9982)`;
};

const sixRows = () => ({ rows: 6, columns: 2 });

/** mg of an ion in a litre from a gram of a salt in it. */
const perGram = (salt: SaltName, ion: number): number => withSalts(pureWater, [{ salt, massG: 1 }], 1)[ionNames[ion] ?? "calcium"];

function addedIons(x: PlainArguments, ion: number): string {
  const [names, grams] = [x.column("salts", "salt") ?? "", x.column("salts", "mass") ?? ""];
  const parts = (Object.keys(salts) as SaltName[]).filter((salt) => perGram(salt, ion) > 0).map((salt) => `${num(perGram(salt, ion))}*SUMPRODUCT(--(${names}=${quote(salt)}),${grams})`);
  return `(${parts.join("+")})/${x.core("volume")}`;
}

/** Whether base has a cell for each ion, as the call asks: six in a line, a heading not counted. */
function baseFits(x: PlainArguments): boolean {
  if (x.operand("base").kind === "omitted") return true;
  const { rows, columns, heading } = x.range("base");
  return Math.min(rows, columns) === 1 && rows * columns - Number(heading) === ionNames.length;
}

function baseIon(x: PlainArguments, ion: number): string {
  if (x.operand("base").kind === "omitted" || !baseFits(x)) return "0";
  const base = x.range("base");
  return `N(${base.rows > 1 ? base.cell(ion, 0) : base.cell(0, ion)})`;
}

/** No chalk, or no more than water in air holds: `requireChalkDissolves` of the core. */
function chalkDissolves(x: PlainArguments): string {
  const chalk = `SUMPRODUCT(--(${x.column("salts", "salt") ?? ""}="chalk"),${x.column("salts", "mass") ?? ""})`;
  const [calcium, bicarbonate] = [0, 5].map((ion) => `(${baseIon(x, ion)}+${addedIons(x, ion)})`);
  return `OR(${chalk}=0,${calcium}/40078*(${bicarbonate}/61016.8)^2<=${num(chalkSaturation)})`;
}

/** Equivalents in a millilitre of the acid; density lines as in `core/water/acid.ts`. */
function acidText(x: PlainArguments, name: AcidName): string {
  const w = `(${x.core("strength")}/100)`;
  const density = name === "lactic" ? `(0.998+0.24*${w})` : `(0.998+0.5156*${w}+0.3443*${w}^2)`;
  const molPerL = `1000*${density}*${w}/${num(acids[name].molarMass)}`;
  const usual = num(acidMolPerL(name, acids[name].usualPercent));
  const given = x.given("strength");
  const asked = given === false ? usual : given === true ? molPerL : `IF(${given},${molPerL},${usual})`;
  return `${equivalentsText(name, hydrogenText(x))}*${asked}`;
}

const molPerL = (x: PlainArguments, key: string): string => `${x.core(key)}/50043`;

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
    sum: (x, { row, column }: Place) => {
      const [label, volume] = budgetRows[row] ?? budgetRows[0]!;
      return column === 0 ? quote(label) : x.show("volume", volume(x));
    },
  },
  "WATER.BOILS": { sum: (x) => polynomialText(waterBoilsAtC, { from: -600, to: 5100, degree: 8 }, x.core("altitude")) },
  "WATER.STRIKE": { sum: strike, holds: (x) => [`${strike(x)}<=100`] },
  "WATER.STEP": {
    holds: (x) => [`${x.core("target")}>=${x.core("from")}`, `${x.core("additionTemperature")}>${x.core("target")}`],
    sum: (x) => `(0.4*${x.core("grainMass")}+${x.core("waterVolume")}*0.9982)*(${x.core("target")}-${x.core("from")})/(${x.core("additionTemperature")}-${x.core("target")})/0.9982`,
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
      if (shares.columns !== 1 || shares.rows - Number(shares.heading) !== profiles.rows - Number(profiles.heading)) throw new NoPlainForm("shares and profiles do not stand side by side");
      return [];
    },
    sum: (x, { row, column }) => (column === 0 ? quote(ionLabel(ionNames[row] ?? "calcium")) : `SUMPRODUCT(${x.range("shares").all},${x.column("profiles", ionNames[row] ?? "") ?? ""})/SUM(${x.range("shares").all})`),
  },
  "WATER.ALKALINITY": { sum: (x) => `${x.core("alkalinity")}-${num(100.0869 / 40.078)}*${x.core("calcium")}/3.5-${num(100.0869 / 24.305)}*${x.core("magnesium")}/7` },
  "WATER.ACID": {
    holds: (x) => [`${x.core("targetAlkalinity")}<=${x.core("alkalinity")}`],
    sum: (x) => `1000*${x.core("volume")}*(${molPerL(x, "alkalinity")}-${leftText(x)})/(${x.choice("acid", { lactic: acidText(x, "lactic"), phosphoric: acidText(x, "phosphoric") })})`,
  },
  "WATER.DECHLORINATE": { sum: (x) => `${x.core("volume")}*${x.core("chlorine")}*1.25*${x.choice("compound", { potassium: "222.324", sodium: "190.107" })}/(2*70.906)` },
} satisfies Record<string, PlainForm>;
