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
  return `100*(${original}-${extract})/${original}/(1-0.005161*${extract})`;
};

/** 152 V^0.43 for a pack of 100; see `core/yeast/starter.ts`. */
const growth = (x: PlainArguments): string => `${x.core("cellsWanted")}/${x.core("cellsNow")}`;

export const yeastForms = {
  "YEAST.CELLS": { sum: (x) => `${x.core("rate")}*${x.core("volume")}*${platoText(x.core("gravity"))}` },
  // Rounded up; a hair less, so that 180 cells out of packs with 60 come to 3.
  "YEAST.PACKS": { sum: (x) => `-INT(-(${x.core("cells")}/(${x.core("perPack")}*${x.core("viability")}/100)-1E-9))` },
  "YEAST.VIABILITY": { sum: (x) => `100*${x.choice("kind", { liquid: "0.8", dry: "0.98" })}^(${x.core("days")}/30)` },
  "YEAST.STARTER": {
    holds: (x) => [`${growth(x)}<=1.52*8^0.43*(1+1E-9)`],
    sum: (x) => {
      const [now, wanted, gravity] = [x.core("cellsNow"), x.core("cellsWanted"), x.core("gravity")];
      const forRoom = `MAX(0.5,(${growth(x)}/1.52)^(1/0.43))*${now}/100`;
      const forSugar = `(${wanted}-${now})/(1.4*10*${platoText(gravity)}*${gravity}*0.9982)`;
      return `IF(${wanted}<=${now},0,MAX(${forRoom},${forSugar}))`;
    },
  },
  "YEAST.FINISH": { sum: (x) => gravityText(`${platoText(x.core("originalGravity"))}*(1-${x.core("attenuation")}/100)`) },
  "YEAST.ATTENUATION": {
    holds: (x) => [`${x.core("gravity")}<=${x.core("originalGravity")}+1E-9`],
    sum: (x) => x.choice("kind", { apparent: apparent(x), real: real(x) }),
  },
} satisfies Record<string, PlainForm>;
