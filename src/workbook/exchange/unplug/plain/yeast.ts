import { waterKgPerL20C } from "../../../../core/wort/density";
import { fermentedLoss } from "../../../../core/yeast/attenuation";
import { mashRest } from "../../../../core/yeast/mash-rest";
import {
  cellsAtOneLitre,
  cultures,
  fewestLitres,
  growthExponent,
  mostLitres,
  newCellsOfCulture,
  newCellsPerGram,
} from "../../../../core/yeast/starter";
import { aliveAfter30Days } from "../../../../core/yeast/viability";
import { oxygenInWater, oxygenMgPerMole, oxygenShare, sugarSaltsOut } from "../../../../core/yeast/oxygen";
import { molesOfWaterPerL } from "../../../../core/pack/solubility";
import { airText, vapourText } from "./local-air";
import { num, quote } from "./formula-parts";
import { extractText, gravityText, platoText, realExtractText } from "./gravity-and-extract";
import type { PlainArguments } from "./plain-arguments";
import type { PlainForm } from "./plain-form";

const apparent = (x: PlainArguments): string => {
  const original = platoText(x.core("originalGravity"));
  return `100*(${original}-${platoText(x.core("gravity"))})/${original}`;
};

const real = (x: PlainArguments): string => {
  const original = platoText(x.core("originalGravity"));
  const extract = realExtractText(x.core("originalGravity"), x.core("gravity"));
  return `100*(${original}-${extract})/${original}/(1-${num(fermentedLoss)}*${extract})`;
};

/** What a litre makes of a pack of 100, as a multiple of it: see `core/yeast/starter.ts`. */
const inOneLitre = num(cellsAtOneLitre / 100);
const newCells = (x: PlainArguments): string =>
  x.choice("culture", Object.fromEntries(cultures.map((culture) => [culture, num(newCellsOfCulture[culture])])));

/** One step of a starter, from so many cells to so many. */
function starter(x: PlainArguments, now: string, wanted: string): string {
  const gravity = x.core("gravity");
  const forRoom = `MAX(${num(fewestLitres)},((1+(${wanted}/${now}-1)/${newCells(x)})/${inOneLitre})^(1/${num(growthExponent)}))*${now}/100`;
  const forSugar = `(${wanted}-${now})/(${num(newCellsPerGram)}*10*${platoText(gravity)}*${gravity}*${num(waterKgPerL20C)})`;
  return `IF(${wanted}<=${now},0,MAX(${forRoom},${forSugar}))`;
}
const canGrow = (x: PlainArguments, now = "", wanted = ""): string[] => [
  `${wanted}/${now}-1<=${newCells(x)}*(${inOneLitre}*${num(mostLitres)}^${num(growthExponent)}-1)+1E-8`,
];

/** Cells before, between and after two steps. */
function steps(x: PlainArguments): [string, string, string] {
  const now = x.core("cellsNow");
  const wanted = `MAX(${now},${x.core("cellsWanted")})`;
  return [now, `SQRT(${now}*${wanted})`, wanted];
}

export const yeastForms = {
  "YEAST.CELLS": { sum: (x) => `${x.core("rate")}*${x.core("volume")}*${platoText(x.core("gravity"))}` },
  // Rounded up; a hair less, so that 180 cells out of packs with 60 come to 3.
  "YEAST.PACKS": { sum: (x) => `-INT(-(${x.core("cells")}/(${x.core("perPack")}*${x.core("viability")}/100)-1E-9))` },
  "YEAST.VIABILITY": {
    sum: (x) => `100*${x.choice("kind", { liquid: num(aliveAfter30Days.liquid), dry: num(aliveAfter30Days.dry) })}^(${x.core("days")}/30)`,
  },
  "YEAST.AGED": {
    holds: (x) => [`INT(${x.core("today")})>=INT(${x.core("madeOn")})`],
    // Not a power: LibreOffice calls one that is too small for a number an error, EXP gives 0.
    sum: (x) => `100*EXP(LN(${x.core("figure")}/100)*(INT(${x.core("today")})-INT(${x.core("madeOn")}))/${x.core("days")})`,
  },
  "YEAST.STARTER": {
    holds: (x) => canGrow(x, x.core("cellsNow"), x.core("cellsWanted")),
    sum: (x) => starter(x, x.core("cellsNow"), x.core("cellsWanted")),
  },
  "YEAST.STEPS": {
    holds: (x) => canGrow(x, ...steps(x).slice(0, 2)),
    size: () => ({ rows: 2, columns: 3 }),
    sum: (x, { row, column }) => {
      const [now, between, wanted] = steps(x);
      if (column === 0) return quote(row === 0 ? "first step" : "second step");
      if (column === 2) return x.show("cells", row === 0 ? between : wanted);
      return x.show("volume", row === 0 ? starter(x, now, between) : starter(x, between, wanted));
    },
  },
  "YEAST.OXYGEN": {
    sum: (x) => {
      const [constant, one, two] = oxygenInWater;
      const kelvin = `(${x.core("temperature")}+273.15)`;
      const share = x.choice("gas", { air: num(oxygenShare.air), oxygen: num(oxygenShare.oxygen) });
      return `${num((oxygenMgPerMole * molesOfWaterPerL) / 10)}*${share}*(${airText(x)}-${vapourText(x.core("temperature"))})*EXP(-${num(constant)}-${num(one)}/${kelvin}+${num(-two)}/${kelvin}^2-${num(Math.LN10 * sugarSaltsOut * 1000)}*${extractText(x.core("gravity"))})`;
    },
  },
  "YEAST.FINISH": { sum: (x) => gravityText(`${platoText(x.core("originalGravity"))}*(1-${x.core("attenuation")}/100)`) },
  "YEAST.EXPECT": {
    sum: (x) => {
      const away = (from: string): string => `(1-${num(mashRest.lossPerSquare)}*(${from}-${num(mashRest.bestC)})^2)`;
      return `${x.core("attenuation")}*${away(x.core("restTemperature"))}/${away(num(mashRest.usualC))}`;
    },
  },
  "YEAST.ATTENUATION": {
    holds: (x) => [`${x.core("gravity")}<=${x.core("originalGravity")}+1E-9`],
    sum: (x) => x.choice("kind", { apparent: apparent(x), real: real(x) }),
  },
} satisfies Record<string, PlainForm>;
