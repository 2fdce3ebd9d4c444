import { gravityLimits } from "../../../../core/wort/gravity-limits";
import { alcoholPerGravity, balling, ethanolRelativeDensity } from "../../../../core/beer/alcohol";
import {
  ashPercent,
  kilocaloriesPerGAlcohol,
  kilocaloriesPerGExtract,
  kilojoulesPerKilocalorie,
  proteinShareOfExtract,
} from "../../../../core/beer/energy";
import { leastAttenuationPercent, perBrix, perOriginalBrix } from "../../../../core/beer/refractometer";
import { ebcPerAbsorbance, lovibondLine, srmPerAbsorbance } from "../../../../core/wort/colour-scales";
import { primedAlcoholG, primedAlcoholPercent } from "../../../../core/beer/primed";
import { alcoholByMassText, gravityText, platoText, realExtractText } from "./gravity-and-extract";
import { labelFactors } from "../../../../core/beer/label";
import { waterKgPerL20C } from "../../../../core/wort/density";
import { hex } from "./colour-hex";
import { num, product, quote } from "./formula-parts";
import type { PlainArguments } from "./plain-arguments";
import type { PlainForm, ValueOnly } from "./plain-form";

const gravities = (x: PlainArguments): [string, string] => [x.core("originalGravity"), x.core("finalGravity")];
const fell = (x: PlainArguments): string[] => [`${x.core("finalGravity")}<=${x.core("originalGravity")}+1E-9`];

const byMass = (x: PlainArguments): string => alcoholByMassText(...gravities(x));
const lost = (x: PlainArguments): string => {
  const [original, final] = gravities(x);
  return `MAX(0,${original}-${final})`;
};
const simply = (x: PlainArguments, how: keyof typeof alcoholPerGravity): string => `${num(alcoholPerGravity[how])}*${lost(x)}`;
const byMassOf = (byVolume: string, x: PlainArguments): string => `${byVolume}*${num(ethanolRelativeDensity)}/${final(x)}`;
const final = (x: PlainArguments): string => x.core("finalGravity");

/** What each volume of gas from priming adds; nothing where none is given. */
const withPrimed = (x: PlainArguments, each: number, text: string): string =>
  x.operand("primed").kind === "omitted" ? text : `${text}+${num(each)}*${x.core("primed")}`;

/** Carbohydrate in 100 g of beer: 0.93 of the real extract less the ash. */
const carbohydrate = (x: PlainArguments): string =>
  `MAX(0,${realExtractText(...gravities(x))}*${num(1 - proteinShareOfExtract)}-${num(ashPercent)})`;

const refractometer = (x: PlainArguments): string =>
  `(1-${num(perOriginalBrix)}*${x.core("originalBrix")}/${x.core("wortCorrection")}+${num(perBrix)}*${x.core("brix")}/${x.core("wortCorrection")})`;

/** Extract before fermentation: the balance of BEER.ABV, which is linear in it, turned round. */
const originalPlato = (x: PlainArguments): string => {
  const alcohol = `${x.core("abv")}*${num(ethanolRelativeDensity)}/${final(x)}`;
  return `((${num(balling.perAlcohol)}*${alcohol}+${num(balling.apparent)}*${platoText(final(x))})/(${num(1 - balling.original)}+${num(balling.perExtract)}*${alcohol}))`;
};

/** Extract before fermentation, °P, as if all that came in later had been in it: see `core/beer/added.ts`. */
function withAdditions(x: PlainArguments): string {
  const [mass, sugar] = [x.column("additions", "mass") ?? "", x.column("additions", "sugar") ?? ""];
  const wort = `${x.core("volume")}*${x.core("originalGravity")}*${num(waterKgPerL20C)}`;
  const scale = x.scale("mass");
  return `((${wort}*${platoText(x.core("originalGravity"))}+${product(`SUMPRODUCT(${mass},${sugar})`, scale)})/(${wort}+${product(`SUM(${mass})`, scale)}))`;
}

const added: PlainForm = {
  holds: (x) => [`${withAdditions(x)}<=${platoText(num(gravityLimits.atMost))}`, `${final(x)}<=${gravityText(withAdditions(x))}+1E-9`],
  size: () => ({ rows: 2, columns: 2 }),
  sum: (x, { row, column }) => {
    if (column === 0) return quote(["original gravity in all", "alcohol"][row] ?? "");
    const original = withAdditions(x);
    if (row === 0) return gravityText(original);
    return `MAX(0,${num(1 - balling.original)}*${original}-${num(balling.apparent)}*${platoText(final(x))})/(${num(balling.perAlcohol)}-${num(balling.perExtract)}*${original})*${final(x)}/${num(ethanolRelativeDensity)}`;
  },
};

const label: PlainForm = {
  holds: fell,
  size: () => ({ rows: 4, columns: 2 }),
  sum: (x, { row, column }) => {
    if (column === 0) return quote(["energy (kJ)", "energy (kcal)", "carbohydrate (g)", "alcohol (% vol)"][row] ?? "");
    const carbohydrates = `${carbohydrate(x)}*${final(x)}`;
    if (row === 2) return carbohydrates;
    if (row === 3) return withPrimed(x, primedAlcoholPercent(1), `${byMass(x)}*${final(x)}/${num(ethanolRelativeDensity)}`);
    const unit = row === 0 ? "kj" : "kcal";
    const food = `(${carbohydrates}+MAX(0,${num(proteinShareOfExtract)}*${realExtractText(...gravities(x))}*${final(x)}))`;
    return withPrimed(
      x,
      (labelFactors.alcohol[unit] * primedAlcoholG(1)) / 10,
      `${num(labelFactors.alcohol[unit])}*${byMass(x)}*${final(x)}+${num(labelFactors.food[unit])}*${food}`,
    );
  },
};

export const beerForms = {
  "BEER.ABV": {
    holds: fell,
    sum: (x) =>
      withPrimed(
        x,
        primedAlcoholPercent(1),
        x.choice("method", {
          extract: `${byMass(x)}*${final(x)}/${num(ethanolRelativeDensity)}`,
          simple: simply(x, "simple"),
          kit: simply(x, "kit"),
        }),
      ),
  },
  "BEER.ABW": {
    holds: fell,
    sum: (x) => x.choice("method", { extract: byMass(x), simple: byMassOf(simply(x, "simple"), x), kit: byMassOf(simply(x, "kit"), x) }),
  },
  "BEER.EXTRACT": { holds: fell, sum: (x) => realExtractText(...gravities(x)) },
  "BEER.ENERGY": {
    holds: fell,
    sum: (x) =>
      `(${withPrimed(x, (kilocaloriesPerGAlcohol * primedAlcoholG(1)) / 10, `(${num(kilocaloriesPerGAlcohol)}*${byMass(x)}+${num(kilocaloriesPerGExtract)}*MAX(0,${realExtractText(...gravities(x))}-${num(ashPercent)}))*${final(x)}`)})*${x.core("serving")}*${num(kilojoulesPerKilocalorie)}/100`,
  },
  "BEER.CARBS": { holds: fell, sum: (x) => `${carbohydrate(x)}*${final(x)}*${x.core("serving")}/100` },
  "BEER.REFRACTOMETER": {
    holds: (x) => [
      `${x.core("brix")}<=${x.core("originalBrix")}`,
      `100*(1-${platoText(refractometer(x))}*${x.core("wortCorrection")}/${x.core("originalBrix")})>=${num(leastAttenuationPercent)}`,
    ],
    sum: refractometer,
  },
  "BEER.ORIGINAL": {
    // 1.2 is the top of the gravity scale, 44.5… °P.
    holds: (x) => [`${originalPlato(x)}<=${platoText(num(gravityLimits.atMost))}`],
    sum: (x) => gravityText(originalPlato(x)),
  },
  "BEER.ADDED": added,
  "BEER.BLEND": { value: "it weighs several columns against each other row by row" },
  "BEER.LABEL": label,
  "BEER.EBC": { sum: (x) => `${x.core("srm")}*${num(ebcPerAbsorbance)}/${num(srmPerAbsorbance)}` },
  "BEER.SRM": { sum: (x) => `${x.core("ebc")}*${num(srmPerAbsorbance)}/${num(ebcPerAbsorbance)}` },
  "BEER.LOVIBOND": { sum: (x) => `(${x.core("srm")}+${num(lovibondLine.above)})/${num(lovibondLine.slope)}` },
  "BEER.HEX": hex,
  "BEER.STYLE": { value: "it looks the style up in a table that only Gylebook has" },
} satisfies Record<string, PlainForm | ValueOnly>;
