import { criticalReynolds, density, friction, gravityMPerS2, viscosity } from "../../../../core/pack/beer-line";
import { daysAt21, fewestDays } from "../../../../core/pack/ready";
import { closeShare, readingError, volumesPerPoint, type BottleCheck } from "../../../../core/pack/bottle-check";
import { bottleKinds, bottleLimits, vesselKinds, type VesselKind, type WorkingLimit } from "../../../../core/pack/bottle-kinds";
import { airInWater, filledAtC, growth, litreBarPerMoleKelvin } from "../../../../core/pack/closed-bottle";
import { waterVapourBar } from "../../../../core/pack/local-air";
import { co2YieldOfSugar, primingSugars } from "../../../../core/pack/priming";
import {
  beerBesideWater,
  carbonDioxideInWater,
  excessOfEachVolume,
  gramsPerVolume,
  molesOfVolumes,
  molesOfWaterPerL,
} from "../../../../core/pack/solubility";
import {
  bottleAdvice,
  bottleWords,
  kegAdvice,
  limitBasis,
  notCountedWords,
  passedWords,
  unfinishedBottles,
  unfinishedKeg,
} from "../../../../functions/pack/check-words";
import { airText as air, vapourText as vapour } from "./local-air";
import { pointsInReserve } from "../../../../core/pack/spund";
import { num, quote } from "./formula-parts";
import type { PlainArguments } from "./plain-arguments";
import { NoPlainForm } from "./no-plain-form";
import type { PlainForm } from "./plain-form";

/** What a litre of beer takes up per bar, mol, and the rest of it: see `core/pack/solubility.ts`, whose sums these are. */
function takesUp([constant, ...powers]: readonly [number, ...number[]], celsius: string): string {
  const kelvin = `(${celsius}+273.15)`;
  // The constant factor goes into the exponent.
  const first = Math.log((beerBesideWater * molesOfWaterPerL) / 10) - constant;
  return `EXP(${num(first)}${powers.map((power, index) => `${power > 0 ? "-" : "+"}${num(Math.abs(power))}/${kelvin}${index === 0 ? "" : `^${index + 1}`}`).join("")})`;
}
const excess = (celsius: string): string => `(${excessOfEachVolume[0]}+${excessOfEachVolume[1]}*${celsius})`;
const moles = num(molesOfVolumes(1));
const ofGas = (volumes: string, celsius: string): string => `${moles}*${volumes}*(1+${excess(celsius)}*${volumes})`;

const kegBar = (x: PlainArguments, volumes: string, celsius: string): string =>
  `(${ofGas(volumes, celsius)}/${takesUp(carbonDioxideInWater, celsius)}+${vapour(celsius)}-${air(x)})`;

/** See `core/pack/closed-bottle.ts`; a keg is a bottle without a neck. */
function closedBar(x: PlainArguments, volumes: string, celsius: string): string {
  const neck = `1/(100/${x.core("headspace")}-1)`;
  const holds = keg(
    x,
    "0",
    `(${neck}-(${celsius}-${num(filledAtC)})^2/(${num(growth.at0)}+${num(growth.perC)}*${celsius}))/(${num(litreBarPerMoleKelvin)}*(${celsius}+273.15))`,
  );
  const sealedIn = `(${air(x)}-${num(waterVapourBar(filledAtC))})*${keg(x, "0", neck)}/${num(litreBarPerMoleKelvin * (filledAtC + 273.15))}`;
  return `(${ofGas(volumes, celsius)}/(${takesUp(carbonDioxideInWater, celsius)}+${holds})+${sealedIn}/(${takesUp(airInWater, celsius)}+${holds})+${vapour(celsius)}-${air(x)})`;
}

/** What beer holds in equilibrium with a gauge pressure, volumes. */
function volumesAt(x: PlainArguments, gauge: string, celsius: string): string {
  const gas = `(${gauge}+${air(x)}-${vapour(celsius)})`;
  return `((SQRT(1+4*${excess(celsius)}*${gas}*${takesUp(carbonDioxideInWater, celsius)}/${moles})-1)/(2*${excess(celsius)}))`;
}
const residual = (x: PlainArguments): string => volumesAt(x, "0", x.core("temperature"));

const sugarYield = (x: PlainArguments): string =>
  x.choice("sugar", Object.fromEntries(primingSugars.map((sugar) => [sugar, num(co2YieldOfSugar[sugar])])));
/** Sugar for a litre, g. */
const sugarPerLitre = (x: PlainArguments): string => `(${x.core("co2")}-${residual(x)})*${num(gramsPerVolume)}/${sugarYield(x)}`;

/** No sugar where the beer holds as much, nor where the bottles do not bear it: without a kind they are ordinary. */
function mayPrime(x: PlainArguments): string[] {
  const given = x.given("bottle");
  const ordinary = num(bottleLimits.ordinary.volumes);
  const most = given === false ? ordinary : byBottle(x, (_, limit) => num(limit.volumes ?? 0));
  return [
    `${x.core("co2")}<=${typeof given === "string" ? `IF(${given},${most},${ordinary})` : most}+1E-9`,
    `${x.core("co2")}>=${residual(x)}`,
  ];
}

const toFill = (x: PlainArguments): string => `(${x.core("volume")}-${x.core("loss")}+${x.core("syrup")})`;
const bottles = (x: PlainArguments): string => `INT(${toFill(x)}/(${x.core("bottleVolume")}/1000)+1E-9)`;

const speed = (x: PlainArguments): string => `(${x.core("flow")}/60000/(PI()*(${x.core("lineId")}/1000)^2/4))`;
const lift = (x: PlainArguments): string => `(${x.core("pressure")}-${num(density)}*${num(gravityMPerS2)}*${x.core("height")}/100000)`;
/** Pressure that a metre of line takes up, bar: see `core/pack/beer-line.ts`. */
function barPerMetre(x: PlainArguments): string {
  const reynolds = `(${num(density)}*${speed(x)}*(${x.core("lineId")}/1000)/${num(viscosity)})`;
  return `(IF(${reynolds}<${num(criticalReynolds)},${num(friction.smooth)}/${reynolds},${num(friction.rough)}*${reynolds}^${num(friction.power)})*${num(density)}*${speed(x)}^2/(2*${x.core("lineId")}/1000)/100000)`;
}

const byBottle = (x: PlainArguments, piece: (kind: VesselKind, limit: WorkingLimit) => string): string =>
  x.lookUp("bottle", Object.fromEntries(vesselKinds.map((kind) => [kind, piece(kind, bottleLimits[kind])])));

/** Gravity still to fall, in points; "0" where nobody said. */
function pointsToFall(x: PlainArguments): { counted: string | boolean; points: string; unfinished: string } {
  const conditions: string[] = [];
  for (const key of ["gravity", "expected"]) {
    const operand = x.operand(key);
    if (operand.kind === "text") conditions.push(`N(${operand.text})`);
    else if (x.given(key) === false) return { counted: false, points: "0", unfinished: "FALSE" };
  }
  const counted = conditions.length === 0 ? true : `${conditions.join("*")}>0`;
  const above = `(${x.core("gravity")}-${x.core("expected")})`;
  const unfinished = `${above}>${num(readingError / 1000)}`;
  const bottle = x.operand("bottle");
  // A keg counts no more than what has not finished.
  const fall = `1000*MAX(0,${above})${bottle.kind === "text" ? `*OR(${bottle.text}<>"keg",${unfinished})` : x.choice("bottle", { ...Object.fromEntries(bottleKinds.map((kind) => [kind, ""])), keg: `*(${unfinished})` })}`;
  return { counted, points: counted === true ? fall : `IF(${counted},${fall},0)`, unfinished };
}

const verdicts = ["within", "close", "over"] as const;
/** Words by the verdict: within, close, over. */
const byShare = (share: string, pieces: readonly string[]): string =>
  `CHOOSE(MATCH(${share},{0,${num(closeShare + 1e-9)},${num(1 + 1e-9)}}),${pieces.join(",")})`;

/** Another piece for a keg, where a cell may say that it is one. */
function keg(x: PlainArguments, forKeg: string, forBottle: string): string {
  const bottle = x.operand("bottle");
  return bottle.kind === "text"
    ? `IF(${bottle.text}="keg",${forKeg},${forBottle})`
    : x.choice("bottle", { ...Object.fromEntries(vesselKinds.map((kind) => [kind, forBottle])), keg: forKeg });
}

/** What the judgement goes by: total volumes, pressure, share of the limit. */
function judged(x: PlainArguments) {
  const { counted, points, unfinished } = pointsToFall(x);
  const celsius = x.core("temperature");
  const volumes = points === "0" ? x.core("co2") : `(${x.core("co2")}+${num(volumesPerPoint)}*${points})`;
  const bar = `MAX(0,${closedBar(x, volumes, celsius)})`;
  const share = `MAX(${bar}/${byBottle(x, (_, limit) => num(limit.gaugeBar))},${volumes}/${byBottle(x, (_, limit) => num(limit.volumes ?? 1e9))})`;
  return { counted, points, unfinished, celsius, volumes, bar, share };
}

/** Stands where the figures go in the words of a verdict, so that the long sum of the pressure stands once for each. */
const gap = "#";

/** The verdict in the call's own words; the figures by the same sums. */
const check: PlainForm = {
  sum: (x) => {
    const { counted, points, unfinished, celsius, volumes, bar, share } = judged(x);
    const above = `${x.core("gravity")}>${x.core("expected")}`;
    const shownBar = (value: string): string =>
      `ROUND(${x.show("pressure", value)},${x.byUnits("2", "1")})&${x.byUnits('" bar"', '" psi"')}`;
    const fermenting = `IF(${points}>0," Of this "&ROUND(${num(volumesPerPoint)}*${points},2)&" volumes come from fermentation still to be done.",IF(1000*(${x.core("gravity")}-${x.core("expected")})<-${num(readingError)},${quote(passedWords)},""))`;
    const words = (verdict: BottleCheck["verdict"]): string => {
      const said = (advice: string): string => quote(`${verdict}: ${gap} ${advice}`);
      const either = (waits: string, finished: string, waiting: string): string =>
        counted === false
          ? said(finished)
          : `IF(${counted === true ? waits : `IF(${counted},${waits})`},${said(waiting)},${said(finished)})`;
      return keg(
        x,
        either(unfinished, kegAdvice[verdict], unfinishedKeg[verdict]),
        either(verdict === "within" ? unfinished : above, bottleAdvice[verdict], unfinishedBottles[verdict]),
      );
    };
    const figures = [
      `ROUND(${volumes},2)`,
      '" volumes at "',
      `ROUND(${x.show("temperature", celsius)},1)`,
      x.byUnits('" °C"', '" °F"'),
      '" make "',
      shownBar(bar),
      // No semicolon within the array: the grid of the bench takes it for the end of a row.
      '" in "',
      byBottle(x, (kind) => quote(bottleWords[kind])),
      '"; its working limit is "',
      byBottle(x, (_, limit) => quote(limit.volumes === undefined ? "" : `${limit.volumes} volumes and `)),
      shownBar(byBottle(x, (_, limit) => num(limit.gaugeBar))),
      quote(`${limitBasis}.`),
      counted === false ? quote(notCountedWords) : counted === true ? fermenting : `IF(${counted},${fermenting},${quote(notCountedWords)})`,
    ];
    return `SUBSTITUTE(${byShare(share, verdicts.map(words))},"${gap}",${figures.join("&")})`;
  },
};

/** As `core/pack/spund.ts`. */
const gravityToClose = (x: PlainArguments): string => {
  const [wished, celsius] = [x.core("co2"), x.core("temperature")];
  const space = `${kegBar(x, wished, celsius)}/(100/${x.core("headspace")}-1)/(${num(litreBarPerMoleKelvin)}*(${celsius}+273.15))/${moles}`;
  return `(${x.core("expected")}+(${wished}-${residual(x)}+${space})/${num(1000 * volumesPerPoint)})`;
};

export const packForms = {
  "PACK.RESIDUAL": { sum: residual },
  "PACK.PRIMING": { holds: mayPrime, sum: (x) => `${x.core("volume")}*${sugarPerLitre(x)}` },
  "PACK.DOSE": {
    holds: mayPrime,
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
    holds: (x) => [
      `${kegBar(x, x.core("co2"), x.core("temperature"))}>=0`,
      `${kegBar(x, x.core("co2"), x.core("temperature"))}<=${num(bottleLimits.keg.gaugeBar)}`,
    ],
    sum: (x) => kegBar(x, x.core("co2"), x.core("temperature")),
  },
  "PACK.VOLUMES": { sum: (x) => volumesAt(x, x.core("pressure"), x.core("temperature")) },
  "PACK.SPUND": {
    holds: (x) => [
      `${x.core("co2")}>${residual(x)}`,
      `${kegBar(x, `(${x.core("co2")}+${num(volumesPerPoint * pointsInReserve)})`, x.core("temperature"))}<=${x.core("rating")}`,
      `${x.core("gravity")}>=${gravityToClose(x)}-1E-9`,
    ],
    sum: gravityToClose,
  },
  "PACK.LINE": { holds: (x) => [`${lift(x)}>0`], sum: (x) => `${lift(x)}/${barPerMetre(x)}` },
  "PACK.CHECK": check,
  "PACK.INSIDE": { holds: (x) => [`${judged(x).share}<=1.000000001`], sum: (x) => judged(x).bar },
  "PACK.BOTTLES": {
    holds: (x) => [`${x.core("volume")}-${x.core("loss")}>=-1E-9`],
    size: () => ({ rows: 1, columns: 2 }),
    sum: (x, { column }) =>
      column === 0 ? bottles(x) : x.show("volume", `MAX(0,${toFill(x)}-${bottles(x)}*${x.core("bottleVolume")}/1000)`),
  },
  "PACK.READY": {
    sum: (x) => `INT(${x.core("packagedOn")})+MAX(${num(fewestDays)},-INT(-(${num(daysAt21)}*2^((21-${x.core("temperature")})/10)-1E-9)))`,
  },
} satisfies Record<string, PlainForm>;
