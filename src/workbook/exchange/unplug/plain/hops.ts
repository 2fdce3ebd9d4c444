import { agedBy, hopPackages, packageFactors } from "../../../../core/hops/storage";
import { atom, num, product } from "./formula-parts";
import { bitternessOfAll, bitternessOfEach } from "./hops-bitterness";
import { utilisation } from "./hops-utilisation";
import type { PlainForm, ValueOnly } from "./plain-form";

export const hopsForms = {
  "HOPS.IBU": bitternessOfAll,
  "HOPS.SHARE": bitternessOfEach,
  "HOPS.UTILISATION": {
    sum: (x) => {
      const one = (model: string): string => {
        const { each, all } = utilisation(x.with("model", model), x.core("minutes"));
        return product(each, atom(all));
      };
      return x.choice("model", { tinseth: one("tinseth"), rager: one("rager"), kinetic: one("kinetic") });
    },
  },
  "HOPS.STAND": { value: "it follows the cooling wort step by step" },
  "HOPS.SWAP": { sum: (x) => `${x.core("mass")}*${x.core("alpha")}/${x.core("newAlpha")}` },
  "HOPS.AGED": {
    sum: (x) =>
      `${x.core("alpha")}*EXP(LN(1-${x.core("loss")}/100)/${num(agedBy.days)}*2^((${x.core("temperature")}-${num(agedBy.atC)})/${num(agedBy.doublesEveryC)})*${x.choice("package", Object.fromEntries(hopPackages.map((kept) => [kept, num(packageFactors[kept])])))}*${x.core("days")})`,
  },
  "HOPS.BALANCE": { sum: (x) => `${x.core("ibu")}/(1000*(${x.core("originalGravity")}-1))` },
} satisfies Record<string, PlainForm | ValueOnly>;
