import { packetAlphaPercent } from "../../../../core/hops/alpha";
import { gauss, panels } from "../../../../core/hops/cooling";
import { surroundingsC } from "../../../../functions/hops/stand";
import { num } from "./formula-parts";
import { isoShare, lost, made, utilisationOfIso } from "./hops-utilisation";
import type { PlainArguments } from "./plain-arguments";
import type { PlainForm } from "./plain-form";
import type { At, Workings } from "./workings";

/** Columns: what the panel makes and loses, and both acids after it; the first row holds what the boil has left. */
const [making, losing, alpha, iso] = [0, 1, 2, 3] as const;
const firstPanel = 2;

/** The way down in panels of equal temperature, one row for each: `core/hops/cooling.ts`, cell by cell. */
function workings(x: PlainArguments): Workings {
  const [from, to, boiled] = [x.core("from"), x.core("to"), x.core("boiled")];
  const [far, near] = [`(${from}-${num(surroundingsC)})`, `(${to}-${num(surroundingsC)})`];
  // Difference over its logarithm; of what stays as warm as it is, that distance itself.
  const mean = `IF(ABS(${far}-${near})<1E-9*${far},${far},(${far}-${near})/LN(${far}/${near}))`;
  const over = (rate: (celsius: string) => string, panel: number): string =>
    `=${x.core("minutes")}*${mean}/${panels}*(${gauss
      .map(([place, weight]) => {
        const celsius = `(${from}+(${to}-${from})*${num((panel + place) / panels)})`;
        return `${num(weight)}*${rate(celsius)}/(${celsius}-${num(surroundingsC)})`;
      })
      .join("+")})`;
  return (at) => [
    ["made", "lost", "alpha left", "iso"],
    ["", "", `=EXP(-${made("100")}*${boiled})`, `=${isoShare(boiled, "100")}`],
    ...Array.from({ length: panels }, (_, panel) => {
      const row = firstPanel + panel;
      const own = (column: number): string => at(row, column);
      const above = (column: number): string => at(row - 1, column);
      return [
        over(made, panel),
        over(lost, panel),
        `=${above(alpha)}*EXP(-${own(making)})`,
        `=${above(iso)}*EXP(-${own(losing)})+IF(${own(making)}=0,0,${above(alpha)}*${own(making)}/(${own(losing)}-${own(making)})*(EXP(-${own(making)})-EXP(-${own(losing)})))`,
      ];
    }),
  ];
}

const gained = (at: At): string => `(${at(firstPanel + panels - 1, iso)}-${at(firstPanel - 1, iso)})`;

/** GYLE.HOPS.STAND. */
export const stand: PlainForm = {
  workings,
  // As in the call: wort cools, and an alpha acid typed as a share of 1 is refused.
  holds: (x) => [`${x.core("to")}<=${x.core("from")}`, `OR(${x.core("alpha")}<=0,${x.core("alpha")}>${num(packetAlphaPercent.least)})`],
  sum: (x, _place, at) =>
    `MAX(0,${x.core("mass")}*10*${x.core("alpha")}/${x.core("volume")}*${gained(at)}*${utilisationOfIso(x.core("gravity"))})`,
};
