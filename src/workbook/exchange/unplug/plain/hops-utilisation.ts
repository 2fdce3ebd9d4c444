import { isoLosing, isoMaking } from "../../../../core/hops/isomerisation";
import { ragerTerms, tinsethTerms } from "../../../../core/hops/utilisation";
import { num } from "./formula-parts";
import type { PlainArguments } from "./plain-arguments";

/** Rates of `core/hops/isomerisation.ts`, per minute, at a temperature in °C. */
export const made = (celsius: string): string => `(${num(isoMaking.perMinute)}*EXP(-${num(isoMaking.kelvin)}/(${celsius}+273.15)))`;
export const lost = (celsius: string): string => `(${num(isoLosing.perMinute)}*EXP(-${num(isoLosing.kelvin)}/(${celsius}+273.15)))`;
/** Iso-alpha acid after some minutes, as a share of the alpha acid put in; a range of minutes is taken row by row. */
export const isoShare = (minutes: string, celsius: string): string =>
  `(${made(celsius)}/(${lost(celsius)}-${made(celsius)})*(EXP(-${made(celsius)}*${minutes})-EXP(-${lost(celsius)}*${minutes})))`;

/** Minutes count by the speed of isomerisation against 100 °C. */
const minutesAt100 = (minutes: string, celsius: string): string =>
  celsius === "100" ? minutes : `${minutes}*EXP(-${num(isoMaking.kelvin)}/(${celsius}+273.15)+${num(isoMaking.kelvin)}/373.15)`;
const strength = (gravity: string): string => `${num(tinsethTerms.factor)}*${num(tinsethTerms.base)}^(${gravity}-1)`;

/** What a share of the alpha acid that has become iso-alpha acid is worth: an hour at 100 °C as Tinseth's. */
export const utilisationOfIso = (gravity: string): string =>
  `${strength(gravity)}/${num(tinsethTerms.divisor)}*(1-EXP(-${num(60 * tinsethTerms.perMinute)}))/${isoShare("60", "100")}`;

/** The utilisation in one factor that depends on the minutes and one that does not. */
export function utilisation(x: PlainArguments, minutes: string, boils = x.core("boilsAt")): { each: string; all: string } {
  const gravity = x.core("gravity");
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
      kinetic: utilisationOfIso(gravity),
    }),
  };
}
