import { surroundings } from "../../../../core/hops/after-boil";
import { packetAlphaPercent } from "../../../../core/hops/alpha";
import { formFactors } from "../../../../core/hops/form";
import { gauss, panels } from "../../../../core/hops/cooling";
import { isoLosing, isoMaking } from "../../../../core/hops/isomerisation";
import { atom, num, product } from "./formula-parts";
import { utilisation } from "./hops-utilisation";
import { layoutOf, type PlainArguments } from "./plain-arguments";
import { NoPlainForm } from "./no-plain-form";
import type { PlainForm } from "./plain-form";
import { columnOf, type At, type Workings } from "./workings";

/** Rows that may be inserted among the hops later and still count. */
const spareRows = 4;

/** The single figures, by their column in the second row of the workings. */
const figures = ["boils", "stands", "stand lasts", "chilled to", "surroundings", "chilling", "down to the stand", "down from it"] as const;
type Figure = (typeof figures)[number];

/** Columns of the way down, one row for each panel: see `core/hops/cooling.ts`. The last two are of hops that go in for the stand. */
const way = ["made", "lost", "alpha left", "iso left", "iso from alpha", "alpha left of the stand's", "iso of the stand's"] as const;
const [made, lost, alphaLeft, isoLeft, isoMade, standAlpha, standIso] = way.map((_, column) => column) as [
  number,
  number,
  number,
  number,
  number,
  number,
  number,
];
const firstLeg = 3;
const stand = firstLeg + panels;
const secondLeg = stand + 1;
const end = secondLeg + panels - 1;
/** One row for each hop. */
const firstHop = end + 2;
const hop = ["minutes", "alpha after the boil", "iso after the boil", "iso gained", "IBU"] as const;

const rate = ({ perMinute, kelvin }: { readonly perMinute: number; readonly kelvin: number }, celsius: string): string =>
  `${num(perMinute)}*EXP(-${num(kelvin)}/(${celsius}+273.15))`;

const rowsOf = (x: PlainArguments): number => x.range("additions").rows - Number(x.range("additions").heading) + spareRows;

const placeOf = (x: PlainArguments, name: string): number => layoutOf(x.parameter("additions"), x.range("additions").columns).indexOf(name);

function cellOf(x: PlainArguments, name: string, row: number): string {
  const column = placeOf(x, name);
  if (column < 0) throw new NoPlainForm(`the range has no column for ${name}`);
  return `INDEX(${x.range("additions").all},${row},${column + 1})`;
}

/** A tenth more for pellets; whole where the range has no such column. */
const formFactor = (x: PlainArguments, row: number): string =>
  placeOf(x, "form") < 0 ? "1" : `(1+${num(formFactors.pellets - 1)}*(${cellOf(x, "form", row)}="pellets"))`;

const columnIn = (x: PlainArguments, name: string): string => x.column("additions", name) ?? cellOf(x, name, 0);

/** The hop acids from flame-out to the fermenter, and what each hop brings: `core/hops/bitterness.ts`, cell by cell. */
function workings(x: PlainArguments): Workings {
  return (at) => {
    const figure = (name: Figure): string => at(1, figures.indexOf(name));
    return [
      [...figures],
      figuresOf(x, figure),
      [...way],
      ...Array.from({ length: panels }, (_, panel) =>
        wayLine(at, firstLeg + panel, panelOf(figure, "down to the stand", figure("boils"), panel), false),
      ),
      wayLine(
        at,
        stand,
        [isoMaking, isoLosing].map((of) => `${rate(of, figure("stands"))}*${figure("stand lasts")}`),
        true,
      ),
      ...Array.from({ length: panels }, (_, panel) =>
        wayLine(at, secondLeg + panel, panelOf(figure, "down from it", figure("stands"), panel), true),
      ),
      [...hop],
      ...Array.from({ length: rowsOf(x) }, (_, index) => hopLine(x, at, figure, index)),
    ];
  };
}

function figuresOf(x: PlainArguments, figure: (name: Figure) => string): string[] {
  const [boils, to, minutes] = [x.core("boilsAt"), x.core("chilledTo"), x.core("standMinutes")];
  const given = x.given("standTemperature");
  const stands = given === false ? boils : `MIN(${boils},${x.core("standTemperature")})`;
  const isStand = given === false ? "FALSE" : given === true ? `${minutes}>0` : `AND(${given},${minutes}>0)`;
  // Minutes of the chilling in all, for each step of the logarithm: 0 where there is none.
  const chilling = `IF(AND(${x.core("chillMinutes")}>0,${figure("boils")}>${figure("chilled to")}),${x.core("chillMinutes")}/LN((${figure("boils")}-${figure("surroundings")})/(${figure("chilled to")}-${figure("surroundings")})),0)`;
  const found: Readonly<Record<Figure, string>> = {
    boils,
    stands: given === false ? boils : `IF(${isStand},${stands},${boils})`,
    "stand lasts": given === false ? "0" : `IF(${isStand},${minutes},0)`,
    "chilled to": to,
    surroundings: `MIN(${surroundings.atMostC},${to}-${surroundings.below})`,
    chilling,
    // Degrees of each leg.
    "down to the stand": `MAX(0,${figure("boils")}-MAX(${figure("stands")},${figure("chilled to")}))`,
    "down from it": `MAX(0,${figure("stands")}-${figure("chilled to")})`,
  };
  return figures.map((name) => `=${found[name]}`);
}

/** What is made and lost in one of the panels of equal temperature that a leg is cut into. */
function panelOf(figure: (name: Figure) => string, leg: Figure, from: string, panel: number): string[] {
  const lasts = `${figure("chilling")}*${figure(leg)}/${panels}`;
  return [isoMaking, isoLosing].map((of) => {
    const points = gauss.map(([place, weight]) => {
      const celsius = `(${from}-${figure(leg)}*${num((panel + place) / panels)})`;
      return `${num(weight)}*${rate(of, celsius)}/(${celsius}-${figure("surroundings")})`;
    });
    return `IF(${figure(leg)}=0,0,${lasts}*(${points.join("+")}))`;
  });
}

/** Both acids after a part of the way: `heatedBy` in `core/hops/isomerisation.ts`, of 1 of each. */
function wayLine(at: At, row: number, [gained = "", given = ""]: readonly string[], afterStandBegins: boolean): string[] {
  const own = (column: number): string => at(row, column);
  const above = (column: number, start: string): string => (row === firstLeg ? start : at(row - 1, column));
  const isoOf = (alpha: string, iso: string): string =>
    `${iso}*EXP(-${own(lost)})+IF(${own(made)}=0,0,${alpha}*${own(made)}/(${own(lost)}-${own(made)})*(EXP(-${own(made)})-EXP(-${own(lost)})))`;
  return [
    gained,
    given,
    `${above(alphaLeft, "1")}*EXP(-${own(made)})`,
    `${above(isoLeft, "1")}*EXP(-${own(lost)})`,
    isoOf(above(alphaLeft, "1"), above(isoMade, "0")),
    afterStandBegins ? `${above(standAlpha, "1")}*EXP(-${own(made)})` : "1",
    afterStandBegins ? isoOf(above(standAlpha, "1"), above(standIso, "0")) : "0",
  ].map((text) => `=${text}`);
}

function hopLine(x: PlainArguments, at: At, figure: (name: Figure) => string, index: number): string[] {
  const row = firstHop + index;
  const [minutes, alpha, iso, gained] = [0, 1, 2, 3].map((column) => at(row, column)) as [string, string, string, string];
  const cell = (name: string): string => cellOf(x, name, index + 1);
  const added = cell("minutes");
  const beyond = `${index + 1}>ROWS(${x.range("additions").all})`;
  const boils = figure("boils");
  const [k1, k2] = [rate(isoMaking, boils), rate(isoLosing, boils)];
  const isStand = `IF(ISTEXT(${added}),LOWER(TRIM(${added}))="stand",FALSE)`;
  const { each, all } = utilisation(x, minutes, boils);
  const { all: ofIso } = utilisation(x.with("model", "kinetic"), minutes, boils);
  const share = `IF(${minutes}="",0,${product(each, atom(all))})+${gained}*${ofIso}`;
  return [
    // Rows that wait for hops to be put in point beyond the list.
    `=IF(${beyond},"",IF(ISTEXT(${added}),IF(LOWER(TRIM(${added}))="first wort",${x.core("boilMinutes")},""),N(${added})))`,
    `=IF(${minutes}="",0,EXP(-${k1}*${minutes}))`,
    `=IF(${minutes}="",0,${k1}/(${k2}-${k1})*(EXP(-${k1}*${minutes})-EXP(-${k2}*${minutes})))`,
    `=IF(${beyond},0,IF(${isStand},${at(end, standIso)},IF(${minutes}="",0,MAX(0,${iso}*(${at(end, isoLeft)}-1)+${alpha}*${at(end, isoMade)}))))`,
    `=IF(${beyond},0,IF(N(${cell("mass")})=0,0,${product(cell("mass"), formFactor(x, index + 1), `N(${cell("alpha")})`, "10", x.scale("smallMass"))}/${x.core("volume")}*(${share})))`,
  ];
}

const needs = (x: PlainArguments, word: string, lacks: boolean | string): string[] => {
  if (lacks === false) return [];
  const asked = `COUNTIF(${columnIn(x, "minutes")},"${word}")>0`;
  return [lacks === true ? asked : `AND(${asked},${lacks})`];
};
const lacking = (x: PlainArguments, key: string): boolean | string => {
  const given = x.given(key);
  return typeof given === "boolean" ? !given : `NOT(${given})`;
};

function notHotterThanTheBoil(x: PlainArguments): string[] {
  const given = x.given("standTemperature");
  const test = `${x.core("standTemperature")}<=${x.core("boilsAt")}+1`;
  return given === false ? [] : [given === true ? test : `IF(${given},${test},TRUE)`];
}

const common = {
  // As in the call: an alpha acid typed as a share of 1 is refused, and a stand that is hotter than the boil.
  holds: (x: PlainArguments): string[] => [
    ...notHotterThanTheBoil(x),
    `SUMPRODUCT((${columnIn(x, "alpha")}>0)*(${columnIn(x, "alpha")}<=${packetAlphaPercent.least})*(${columnIn(x, "mass")}<>0))=0`,
    `ROWS(${x.range("additions").all})<=${rowsOf(x)}`,
  ],
  waits: (x: PlainArguments): string[] => [
    ...needs(x, "first wort", lacking(x, "boilMinutes")),
    ...needs(x, "stand", lacking(x, "standTemperature")),
    ...needs(x, "stand", x.operand("standMinutes").kind === "omitted" ? true : `${x.core("standMinutes")}=0`),
  ],
  workings,
} satisfies Partial<PlainForm>;

/** GYLE.HOPS.IBU. */
export const bitternessOfAll: PlainForm = {
  ...common,
  sum: (x, _place, at) => `SUM(${columnOf(at, hop.length - 1, firstHop, firstHop + rowsOf(x) - 1)})`,
};

/** GYLE.HOPS.SHARE. */
export const bitternessOfEach: PlainForm = {
  ...common,
  size: (x) => ({ rows: x.range("additions").rows - Number(x.range("additions").heading), columns: 1 }),
  sum: (x, { row }, at) => `IF(N(${cellOf(x, "mass", row + 1)})=0,"",${at(firstHop + row, hop.length - 1)})`,
};
