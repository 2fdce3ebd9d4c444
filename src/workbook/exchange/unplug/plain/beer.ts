import { primedAlcoholG, primedAlcoholPercent } from "../../../../core/beer/primed";
import { alcoholByMassText, gravityText, platoText, realExtractText } from "./gravity-and-extract";
import { num } from "./formula-parts";
import type { PlainArguments } from "./plain-arguments";
import type { PlainForm, ValueOnly } from "./plain-form";

const gravities = (x: PlainArguments): [string, string] => [x.core("originalGravity"), x.core("finalGravity")];
const fell = (x: PlainArguments): string[] => [`${x.core("finalGravity")}<=${x.core("originalGravity")}+1E-9`];

const byMass = (x: PlainArguments): string => alcoholByMassText(...gravities(x));
const lost = (x: PlainArguments): string => {
  const [original, final] = gravities(x);
  return `MAX(0,${original}-${final})`;
};
const final = (x: PlainArguments): string => x.core("finalGravity");

/** What each volume of gas from priming adds; nothing where none is given. */
const added = (x: PlainArguments, each: number, text: string): string =>
  x.operand("primed").kind === "omitted" ? text : `${text}+${num(each)}*${x.core("primed")}`;

/** Carbohydrate in 100 g of beer: 0.93 of the real extract less the ash. */
const carbohydrate = (x: PlainArguments): string => `MAX(0,${realExtractText(...gravities(x))}*0.93-0.1)`;

const refractometer = (x: PlainArguments): string =>
  `(1-0.00085683*${x.core("originalBrix")}/${x.core("wortCorrection")}+0.0034941*${x.core("brix")}/${x.core("wortCorrection")})`;

/** Extract before fermentation: the balance of BEER.ABV, which is linear in it, turned round. */
const originalPlato = (x: PlainArguments): string => {
  const alcohol = `${x.core("abv")}*0.791/${final(x)}`;
  return `((2.0665*${alcohol}+0.8192*${platoText(final(x))})/(0.8192+0.010665*${alcohol}))`;
};

export const beerForms = {
  "BEER.ABV": {
    holds: fell,
    sum: (x) =>
      added(
        x,
        primedAlcoholPercent(1),
        x.choice("method", { extract: `${byMass(x)}*${final(x)}/0.791`, simple: `131.25*${lost(x)}`, kit: `131*${lost(x)}` }),
      ),
  },
  "BEER.ABW": {
    holds: fell,
    sum: (x) =>
      x.choice("method", { extract: byMass(x), simple: `131.25*${lost(x)}*0.791/${final(x)}`, kit: `131*${lost(x)}*0.791/${final(x)}` }),
  },
  "BEER.EXTRACT": { holds: fell, sum: (x) => realExtractText(...gravities(x)) },
  "BEER.ENERGY": {
    holds: fell,
    sum: (x) =>
      `(${added(x, (6.9 * primedAlcoholG(1)) / 10, `(6.9*${byMass(x)}+4*MAX(0,${realExtractText(...gravities(x))}-0.1))*${final(x)}`)})*${x.core("serving")}*4.184/100`,
  },
  "BEER.CARBS": { holds: fell, sum: (x) => `${carbohydrate(x)}*${final(x)}*${x.core("serving")}/100` },
  "BEER.REFRACTOMETER": {
    holds: (x) => [
      `${x.core("brix")}<=${x.core("originalBrix")}`,
      `100*(1-${platoText(refractometer(x))}*${x.core("wortCorrection")}/${x.core("originalBrix")})>=61`,
    ],
    sum: refractometer,
  },
  "BEER.ORIGINAL": {
    // 1.2 is the top of the gravity scale, 44.5… °P.
    holds: (x) => [`${originalPlato(x)}<=${platoText("1.2")}`],
    sum: (x) => gravityText(originalPlato(x)),
  },
  "BEER.EBC": { sum: (x) => `${x.core("srm")}*25/12.7` },
  "BEER.SRM": { sum: (x) => `${x.core("ebc")}*12.7/25` },
  "BEER.LOVIBOND": { sum: (x) => `(${x.core("srm")}+0.76)/1.3546` },
  "BEER.HEX": { value: "a colour comes from a whole spectrum of light, 81 sums for each cell" },
  "BEER.STYLE": { value: "it looks the style up in a table that only Gylebook has" },
} satisfies Record<string, PlainForm | ValueOnly>;
