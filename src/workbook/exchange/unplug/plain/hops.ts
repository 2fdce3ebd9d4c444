import { isoLosing, isoMaking } from "../../../../core/hops/isomerisation";
import { dryHopping, mostDryHopsGPerL } from "../../../../core/hops/dry";
import { formFactors } from "../../../../core/hops/form";
import { agedBy, hopPackages, packageFactors } from "../../../../core/hops/storage";
import { ragerTerms, tinsethTerms } from "../../../../core/hops/utilisation";
import { dryHopCaution } from "../../../../functions/hops/dry";
import { atom, num, product, quote } from "./formula-parts";
import type { PlainArguments } from "./plain-arguments";
import { NoPlainForm, type PlainForm, type ValueOnly } from "./plain-form";

/** Rates of `core/hops/isomerisation.ts`, per minute, at a temperature in °C. */
const made = (celsius: string): string => `(${num(isoMaking.perMinute)}*EXP(-${num(isoMaking.kelvin)}/(${celsius}+273.15)))`;
const lost = (celsius: string): string => `(${num(isoLosing.perMinute)}*EXP(-${num(isoLosing.kelvin)}/(${celsius}+273.15)))`;
/** Iso-alpha acid after some minutes, as a share of the alpha acid put in; a range of minutes is taken row by row. */
const isoShare = (minutes: string, celsius: string): string =>
  `(${made(celsius)}/(${lost(celsius)}-${made(celsius)})*(EXP(-${made(celsius)}*${minutes})-EXP(-${lost(celsius)}*${minutes})))`;

/** Minutes count by the speed of isomerisation against 100 °C. */
const minutesAt100 = (minutes: string, celsius: string): string =>
  celsius === "100" ? minutes : `${minutes}*EXP(-${num(isoMaking.kelvin)}/(${celsius}+273.15)+${num(isoMaking.kelvin)}/373.15)`;
const strength = (gravity: string): string => `${num(tinsethTerms.factor)}*${num(tinsethTerms.base)}^(${gravity}-1)`;

/** The utilisation in one factor that depends on the minutes and one that does not. */
function utilisation(x: PlainArguments, minutes: string): { each: string; all: string } {
  const [gravity, boils] = [x.core("gravity"), x.core("boilsAt")];
  const counted = minutesAt100(minutes, boils);
  return {
    each: x.choice("model", {
      tinseth: `(1-EXP(-${num(tinsethTerms.perMinute)}*${counted}))`,
      rager: `(${num(ragerTerms.middle)}+${num(ragerTerms.reach)}*TANH((${counted}-${num(ragerTerms.minutes)})/${num(ragerTerms.spread)}))`,
      kinetic: isoShare(minutes, boils),
    }),
    all: x.choice("model", {
      tinseth: `${strength(gravity)}/${num(tinsethTerms.divisor)}`,
      rager: `0.01/(1+MAX(0,(${gravity}-${num(ragerTerms.from)})/${num(ragerTerms.over)}))`,
      kinetic: `${strength(gravity)}/${num(tinsethTerms.divisor)}*(1-EXP(-${num(60 * tinsethTerms.perMinute)}))/${isoShare("60", "100")}`,
    }),
  };
}

/** A tenth more for pellets; nothing to multiply by where the range has no such column. */
const formText = (text: string | undefined): string =>
  text === undefined ? "1" : `(1+${num(formFactors.pellets - 1)}*(${text}="pellets"))`;

const column = (x: PlainArguments, name: string): string => x.column("additions", name) ?? missing(name);
const missing = (name: string): never => {
  throw new NoPlainForm(`the range has no column for ${name}`);
};

/** Milligrams in a litre from a mass in the brewer's unit and an alpha acid in per cent. */
const perLitre = (x: PlainArguments): string => product("10", x.scale("smallMass"));

/** As in the call: an alpha acid typed as a share of 1 is refused. */
const noShareOfOne = (x: PlainArguments): string[] => [
  `SUMPRODUCT((${column(x, "alpha")}>0)*(${column(x, "alpha")}<=0.3)*(${column(x, "mass")}<>0))=0`,
];

/** What hops gain while the wort stands and chills is summed up along the way down: too much for one cell. */
function requireBoilAlone(x: PlainArguments): void {
  if (
    ["use", "boilMinutes", "standTemperature", "standMinutes", "chillMinutes", "chilledTo"].some((key) => x.operand(key).kind !== "omitted")
  )
    throw new NoPlainForm("it follows the hops through stand and chilling");
}

const ibu: PlainForm = {
  holds: noShareOfOne,
  sum: (x) => {
    requireBoilAlone(x);
    // One SUMPRODUCT for each model: an IF inside it would want an array formula in older programs.
    const sumOf = (model: string): string => {
      const { each, all } = utilisation(x.with("model", model), column(x, "minutes"));
      return `${product(`SUMPRODUCT(${column(x, "mass")},${column(x, "alpha")},${product(each, formText(x.column("additions", "form")))})`, perLitre(x), atom(all))}/${x.core("volume")}`;
    };
    return x.choice("model", { tinseth: sumOf("tinseth"), rager: sumOf("rager"), kinetic: sumOf("kinetic") });
  },
};

const share: PlainForm = {
  holds: noShareOfOne,
  size: (x) => ({ rows: x.range("additions").rows - Number(x.range("additions").heading), columns: 1 }),
  sum: (x, { row }) => {
    requireBoilAlone(x);
    const cell = (name: string): string => x.cell("additions", name, row) ?? missing(name);
    const mass = cell("mass");
    const one = (model: string): string => {
      const { each, all } = utilisation(x.with("model", model), `N(${cell("minutes")})`);
      return `${product(mass, formText(x.cell("additions", "form", row)), `N(${cell("alpha")})`, each, perLitre(x), atom(all))}/${x.core("volume")}`;
    };
    return `IF(N(${mass})=0,"",${x.choice("model", { tinseth: one("tinseth"), rager: one("rager"), kinetic: one("kinetic") })})`;
  },
};

/** Bitterness of a gram for each per cent of alpha acid, in the whole wort. */
const ofOneGram = (x: PlainArguments): string => {
  const one = (model: string): string => {
    const { each, all } = utilisation(x.with("model", model), x.core("minutes"));
    return product("10", each, atom(all));
  };
  const form = x.choice("form", { whole: num(formFactors.whole), pellets: num(formFactors.pellets) });
  return product(form, x.choice("model", { tinseth: one("tinseth"), rager: one("rager"), kinetic: one("kinetic") }));
};

const weigh: PlainForm = {
  holds: (x) => [`${ofOneGram(x)}*${x.core("alpha")}/${x.core("volume")}>=1E-9`],
  sum: (x) => {
    requireBoilAlone(x);
    return `${x.core("ibu")}*${x.core("volume")}/(${ofOneGram(x)}*${x.core("alpha")})`;
  },
};

const rate = (x: PlainArguments): string => `${x.core("mass")}/${x.core("volume")}`;
const dry: PlainForm = {
  holds: (x) => [`${rate(x)}<=${num(mostDryHopsGPerL)}*(1+1E-9)`],
  size: () => ({ rows: 3, columns: 2 }),
  sum: (x, { row, column }) => {
    if (column === 0) return quote(["rate", "bitterness, as it tastes", "before bottling"][row] ?? "");
    if (row === 0) return x.show("hopRate", rate(x));
    if (row === 2) return quote(dryHopCaution);
    const given = x.given("ibu");
    const { isoLost, humulinonesMg, humulinoneTaste } = dryHopping;
    const after = `${x.core("ibu")}*EXP(-${num(isoLost)}*${rate(x)})+${num(humulinonesMg * humulinoneTaste)}*${rate(x)}`;
    return given === true ? after : given === false ? '""' : `IF(${given},${after},"")`;
  },
};

export const hopsForms = {
  "HOPS.IBU": ibu,
  "HOPS.SHARE": share,
  "HOPS.UTILISATION": {
    sum: (x) => {
      const one = (model: string): string => {
        const { each, all } = utilisation(x.with("model", model), x.core("minutes"));
        return product(each, atom(all));
      };
      return x.choice("model", { tinseth: one("tinseth"), rager: one("rager"), kinetic: one("kinetic") });
    },
  },
  "HOPS.WEIGH": weigh,
  "HOPS.DRY": dry,
  "HOPS.STAND": { value: "it follows the cooling wort step by step" },
  "HOPS.SWAP": { sum: (x) => `${x.core("mass")}*${x.core("alpha")}/${x.core("newAlpha")}` },
  "HOPS.AGED": {
    sum: (x) =>
      `${x.core("alpha")}*EXP(LN(1-${x.core("loss")}/100)/${num(agedBy.days)}*2^((${x.core("temperature")}-${num(agedBy.atC)})/${num(agedBy.doublesEveryC)})*${x.choice("package", Object.fromEntries(hopPackages.map((kept) => [kept, num(packageFactors[kept])])))}*${x.core("days")})`,
  },
  "HOPS.BALANCE": { sum: (x) => `${x.core("ibu")}/(1000*(${x.core("originalGravity")}-1))` },
} satisfies Record<string, PlainForm | ValueOnly>;
