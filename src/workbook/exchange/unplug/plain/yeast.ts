import { waterKgPerL20C } from "../../../../core/wort/density";
import { fermentedLoss } from "../../../../core/yeast/attenuation";
import { mashRest } from "../../../../core/yeast/mash-rest";
import { cellsAtOneLitre, fewestLitres, growthExponent, mostLitres, newCellsPerGram } from "../../../../core/yeast/starter";
import { aliveAfter30Days } from "../../../../core/yeast/viability";
import { num } from "./formula-parts";
import { gravityText, platoText, realExtractText } from "./gravity-and-extract";
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
const growth = (x: PlainArguments): string => `${x.core("cellsWanted")}/${x.core("cellsNow")}`;

export const yeastForms = {
  "YEAST.CELLS": { sum: (x) => `${x.core("rate")}*${x.core("volume")}*${platoText(x.core("gravity"))}` },
  // Rounded up; a hair less, so that 180 cells out of packs with 60 come to 3.
  "YEAST.PACKS": { sum: (x) => `-INT(-(${x.core("cells")}/(${x.core("perPack")}*${x.core("viability")}/100)-1E-9))` },
  "YEAST.VIABILITY": {
    sum: (x) => `100*${x.choice("kind", { liquid: num(aliveAfter30Days.liquid), dry: num(aliveAfter30Days.dry) })}^(${x.core("days")}/30)`,
  },
  "YEAST.STARTER": {
    holds: (x) => [`${growth(x)}<=${inOneLitre}*${num(mostLitres)}^${num(growthExponent)}*(1+1E-9)`],
    sum: (x) => {
      const [now, wanted, gravity] = [x.core("cellsNow"), x.core("cellsWanted"), x.core("gravity")];
      const forRoom = `MAX(${num(fewestLitres)},(${growth(x)}/${inOneLitre})^(1/${num(growthExponent)}))*${now}/100`;
      const forSugar = `(${wanted}-${now})/(${num(newCellsPerGram)}*10*${platoText(gravity)}*${gravity}*${num(waterKgPerL20C)})`;
      return `IF(${wanted}<=${now},0,MAX(${forRoom},${forSugar}))`;
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
