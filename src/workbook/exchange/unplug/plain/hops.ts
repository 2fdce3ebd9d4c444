import { dryHopping, mostDryHopsGPerL } from "../../../../core/hops/dry";
import { formFactors } from "../../../../core/hops/form";
import { agedBy, hopPackages, packageFactors } from "../../../../core/hops/storage";
import { dryHopCaution } from "../../../../functions/hops/dry";
import { atom, num, product, quote } from "./formula-parts";
import { bitternessOfAll, bitternessOfEach } from "./hops-bitterness";
import { stand } from "./hops-stand";
import { utilisation } from "./hops-utilisation";
import type { PlainArguments } from "./plain-arguments";
import { NoPlainForm } from "./no-plain-form";
import type { PlainForm, ValueOnly } from "./plain-form";

/** What hops gain while the wort stands and chills is summed up along the way down: the call that weighs goes by the boil alone. */
function requireBoilAlone(x: PlainArguments): void {
  if (["use", "standTemperature", "standMinutes", "chillMinutes", "chilledTo"].some((key) => x.operand(key).kind !== "omitted"))
    throw new NoPlainForm("it follows the hops through stand and chilling");
}

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
  "HOPS.WEIGH": weigh,
  "HOPS.DRY": dry,
  "HOPS.STAND": stand,
  "HOPS.SWAP": { sum: (x) => `${x.core("mass")}*${x.core("alpha")}/${x.core("newAlpha")}` },
  "HOPS.AGED": {
    sum: (x) =>
      `${x.core("alpha")}*EXP(LN(1-${x.core("loss")}/100)/${num(agedBy.days)}*2^((${x.core("temperature")}-${num(agedBy.atC)})/${num(agedBy.doublesEveryC)})*${x.choice("package", Object.fromEntries(hopPackages.map((kept) => [kept, num(packageFactors[kept])])))}*${x.core("days")})`,
  },
  "HOPS.BALANCE": { sum: (x) => `${x.core("ibu")}/(1000*(${x.core("originalGravity")}-1))` },
} satisfies Record<string, PlainForm | ValueOnly>;
