import { bottleKinds, bottleLimits, type BottleKind, type WorkingLimit } from "../../../core/pack/bottle-kinds";
import { co2YieldOfSugar, primingSugars } from "../../../core/pack/priming";
import { bottleAdvice, bottleWords, kegAdvice, passedWords, readingError } from "../../../functions/pack/check-words";
import { num, quote } from "./formula-parts";
import type { PlainArguments } from "./plain-arguments";
import { NoPlainForm, type PlainForm } from "./plain-form";

/** Carbon dioxide left over from fermentation, volumes; the curve is in °F. */
const residual = (celsius: string): string => `(3.0378-0.050062*(${celsius}*1.8+32)+0.00026555*(${celsius}*1.8+32)^2)`;

/** g of carbon dioxide in a litre for each bar. */
const solubility = (celsius: string): string => `(10*EXP(-10.73797+2617.25/(${celsius}+273.15)))`;
const gaugeBar = (volumes: string, celsius: string): string => `(${volumes}*1.977/${solubility(celsius)}-1.01325)`;

const sugarYield = (x: PlainArguments): string => x.choice("sugar", Object.fromEntries(primingSugars.map((sugar) => [sugar, num(co2YieldOfSugar[sugar])])));
/** Sugar for a litre, g. */
const sugarPerLitre = (x: PlainArguments): string => `(${x.core("co2")}-${residual(x.core("temperature"))})*1.977/${sugarYield(x)}`;
const needsSugar = (x: PlainArguments): string[] => [`${x.core("co2")}>=${residual(x.core("temperature"))}`];

const bottles = (x: PlainArguments): string => `INT((${x.core("volume")}-${x.core("loss")})/(${x.core("bottleVolume")}/1000)+1E-9)`;

const speed = (x: PlainArguments): string => `(${x.core("flow")}/60000/(PI()*(${x.core("lineId")}/1000)^2/4))`;
const lift = (x: PlainArguments): string => `(${x.core("pressure")}-1010*9.80665*${x.core("height")}/100000)`;
/** Pressure that a metre of line takes up, bar: see `core/pack/beer-line.ts`. */
function barPerMetre(x: PlainArguments): string {
  const reynolds = `(1010*${speed(x)}*(${x.core("lineId")}/1000)/0.0025)`;
  return `(IF(${reynolds}<2300,64/${reynolds},0.316*${reynolds}^-0.25)*1010*${speed(x)}^2/(2*${x.core("lineId")}/1000)/100000)`;
}

const byBottle = (x: PlainArguments, piece: (kind: BottleKind, limit: WorkingLimit) => string): string =>
  x.lookUp("bottle", Object.fromEntries(bottleKinds.map((kind) => [kind, piece(kind, bottleLimits[kind])])));

/** Gravity still to fall, in points; "0" where nobody said. */
function pointsToFall(x: PlainArguments): { counted: string | boolean; points: string } {
  const [gravity, expected] = [x.given("gravity"), x.given("expected")];
  if (gravity === false || expected === false) return { counted: false, points: "0" };
  const conditions = [gravity, expected].filter((given) => given !== true);
  const counted = conditions.length === 0 ? true : `AND(${conditions.join(",")})`;
  const fall = `MAX(0,1000*(${x.core("gravity")}-${x.core("expected")}))`;
  return { counted, points: counted === true ? fall : `IF(${counted},${fall},0)` };
}

/** Words by the verdict: within, close from nine tenths of a limit on, over. */
const byShare = (share: string, pieces: readonly string[]): string => `CHOOSE(MATCH(${share},{0,0.900000001,1.000000001}),${pieces.join(",")})`;

/** Different words for a keg, where a cell may say that it is one. */
function keg(x: PlainArguments, forKeg: string, forBottle: string): string {
  const bottle = x.operand("bottle");
  return bottle.kind === "text" ? `IF(${bottle.text}="keg",${forKeg},${forBottle})` : x.choice("bottle", { ...Object.fromEntries(bottleKinds.map((kind) => [kind, forBottle])), keg: forKeg });
}

/** The verdict in the call's own words; the figures by the same sums. */
const check: PlainForm = {
  sum: (x) => {
    const { counted, points } = pointsToFall(x);
    const celsius = x.core("temperature");
    const volumes = `(${x.core("co2")}+0.5*${points})`;
    const bar = `MAX(0,${gaugeBar(volumes, celsius)})`;
    const share = `MAX(${bar}/${byBottle(x, (_, limit) => num(limit.gaugeBar))},${volumes}/${byBottle(x, (_, limit) => num(limit.volumes ?? 1e9))})`;
    const shownBar = (value: string): string => `(${x.byUnits(`ROUND(${value},2)&" bar"`, `ROUND(${x.show("pressure", value)},1)&" psi"`)})`;
    const temperature = `(${x.byUnits(`ROUND(${celsius},1)&" °C"`, `ROUND(${x.show("temperature", celsius)},1)&" °F"`)})`;
    const fermenting = `IF(${points}>0," Of this "&ROUND(0.5*${points},2)&" volumes come from fermentation still to be done.",IF(1000*(${x.core("gravity")}-${x.core("expected")})<-${num(readingError)},${quote(passedWords)},""))`;
    const notCounted = '" What fermentation may still add is not counted: give gravity and expected."';
    const advice = (["within", "close", "over"] as const).map((verdict) => keg(x, quote(kegAdvice[verdict] ?? bottleAdvice[verdict]), quote(bottleAdvice[verdict])));
    return [
      byShare(share, ['"within: "', '"close: "', '"over: "']),
      `ROUND(${volumes},2)`, '" volumes at "', temperature, '" make "', shownBar(bar), '" in "', byBottle(x, (kind) => quote(bottleWords[kind])),
      '"; its working limit is "', byBottle(x, (_, limit) => quote(limit.volumes === undefined ? "" : `${limit.volumes} volumes and `)), shownBar(byBottle(x, (_, limit) => num(limit.gaugeBar))), '"."',
      counted === false ? notCounted : counted === true ? fermenting : `IF(${counted},${fermenting},${notCounted})`,
      '" "', byShare(share, advice),
    ].join("&");
  },
};

export const packForms = {
  "PACK.RESIDUAL": { sum: (x) => residual(x.core("temperature")) },
  "PACK.PRIMING": { holds: needsSugar, sum: (x) => `${x.core("volume")}*${sugarPerLitre(x)}` },
  "PACK.DOSE": {
    holds: needsSugar,
    size: (x) => ({ rows: x.range("bottles").rows - Number(x.range("bottles").heading), columns: x.range("bottles").columns }),
    sum: (x, { row, column }) => {
      const size = x.cell("bottles", "size", row);
      const count = x.cell("bottles", "count", row);
      if (size === undefined || (column === 1 && count === undefined)) throw new NoPlainForm("the range of bottles has another shape");
      const each = `${size}*${x.scale("bottleVolume")}/1000*${sugarPerLitre(x)}`;
      return `IF(N(${size})=0,"",${column === 1 ? `N(${count ?? ""})*${each}` : each})`;
    },
  },
  "PACK.PRESSURE": {
    holds: (x) => [`${gaugeBar(x.core("co2"), x.core("temperature"))}>=0`],
    sum: (x) => gaugeBar(x.core("co2"), x.core("temperature")),
  },
  "PACK.VOLUMES": { sum: (x) => `(${x.core("pressure")}+1.01325)*${solubility(x.core("temperature"))}/1.977` },
  "PACK.LINE": { holds: (x) => [`${lift(x)}>0`], sum: (x) => `${lift(x)}/${barPerMetre(x)}` },
  "PACK.CHECK": check,
  "PACK.BOTTLES": {
    holds: (x) => [`${x.core("volume")}-${x.core("loss")}>=-1E-9`],
    size: () => ({ rows: 1, columns: 2 }),
    sum: (x, { column }) => (column === 0 ? bottles(x) : x.show("volume", `MAX(0,${x.core("volume")}-${x.core("loss")}-${bottles(x)}*${x.core("bottleVolume")}/1000)`)),
  },
  "PACK.READY": { sum: (x) => `INT(${x.core("packagedOn")})+MAX(7,-INT(-(10*2^((21-${x.core("temperature")})/10)-1E-9)))` },
} satisfies Record<string, PlainForm>;
