import { firstDate } from "../../../../core/day/clock";
import { stirringMinutes } from "../../../../core/day/schedule";
import { hopPlaces, type HopPlace } from "../../../../core/hops/places";
import { hopCaution, hopWords, ownCautions, ownLines } from "../../../../functions/day/timeline-words";
import { quantity } from "../../../../functions/quantities";
import { num, quote } from "./formula-parts";
import type { RangeOperand } from "./operands";
import { layoutOf, type PlainArguments } from "./plain-arguments";
import type { PlainForm } from "./plain-form";
import { columnOf, type At, type Workings } from "./workings";

/** Rows that may be inserted in a table later and still count. */
const spareRows = 4;
/** Lines that the clock adds at most: boil begins, flame-out, stand, done. */
const ownRows = 4;

/** Columns of the workings. */
const [key, minute, boilMinute, what, amount, caution, part, minutes, before, after, heating, order] = Array.from(
  { length: 12 },
  (_, column) => column,
) as [number, number, number, number, number, number, number, number, number, number, number, number];

/** The single figures of the day, by their column in the second row of the workings. */
const figures = [
  "starts",
  "boil lasts",
  "boil begins",
  "heating",
  "flame out",
  "stirred in",
  "stand",
  "hops stand from",
  "after from",
  "done",
] as const;
type Figure = (typeof figures)[number];
const firstEvent = 2;
const firstStep = firstEvent + ownRows;

/** What comes before what: the lines are sorted by these, within one by the minutes left of the boil and as listed. */
const turn = {
  before: 1e12,
  "first wort": 2e12,
  heating: 3e12,
  "boil begins": 4e12,
  boiling: 5e12,
  "flame out": 6e12,
  "at flame-out": 7e12,
  stand: 8e12,
  after: 9e12,
  done: 10e12,
  dry: 11e12,
} as const;
/** Hops come after the steps of the same minute. */
const hopsAfterSteps = 5000;

const cellIn = (range: RangeOperand, row: number, column: number): string => `INDEX(${range.all},${row},${column + 1})`;
const isFilled = (cell: string): string => `IF(TRIM(${cell}&"")="",FALSE,${cell}<>0)`;
const within = (range: RangeOperand, row: number, then: string): string => `IF(${row}>ROWS(${range.all}),"",${then})`;

interface Table {
  readonly range: RangeOperand;
  /** Number of a column in the range; undefined where the layout leaves it out. */
  readonly column: (name: string) => number | undefined;
  readonly rows: number;
}

function table(x: PlainArguments, name: string): Table {
  const range = x.range(name);
  const layout = layoutOf(x.parameter(name), range.columns);
  return {
    range,
    column: (column) => (layout.includes(column) ? layout.indexOf(column) : undefined),
    rows: range.rows - Number(range.heading) + spareRows,
  };
}

/** Where the lines stand, and the pieces of formula that they share. */
interface Day {
  readonly x: PlainArguments;
  readonly at: At;
  readonly figure: (name: Figure) => string;
  /** A column of all lines. */
  readonly all: (column: number) => string;
  readonly boils: string;
}

/** All lines of the day, each with the key by which they are sorted; see `core/day/schedule.ts` for what is due when. */
function workings(x: PlainArguments): Workings {
  const steps = table(x, "steps");
  const hops = x.operand("hops").kind === "range" ? table(x, "hops") : undefined;
  const firstHop = firstStep + steps.rows;
  const last = firstHop + (hops?.rows ?? 0) - 1;
  return (at) => {
    const figure = (name: Figure): string => at(1, figures.indexOf(name));
    const all = (column: number): string => columnOf(at, column, firstEvent, last);
    const day: Day = { x, at, figure, all, boils: `${figure("boil lasts")}>0` };
    const lines = [
      ...ownLinesOf(day),
      ...Array.from({ length: steps.rows }, (_, index) => stepLine(day, steps, index)),
      ...(hops ? Array.from({ length: hops.rows }, (_, index) => hopLine(day, hops, index, firstHop + index)) : []),
    ];
    return [[...figures], figuresOf(day, firstHop - 1), ...lines.map((line, index) => [...filledUp(line), orderOf(day, index + 1)])];
  };
}

const filledUp = (line: readonly string[]): string[] => Array.from({ length: order }, (_, column) => line[column] ?? "");

/** Where the line stands that is the first, the second … of the day. */
const orderOf = ({ all }: Day, place: number): string =>
  `=IF(COUNT(${all(key)})<${place},"",MATCH(SMALL(${all(key)},${place}),${all(key)},0))`;

function figuresOf({ x, at, figure, all }: Day, lastStep: number): string[] {
  const found: Readonly<Record<Figure, string>> = {
    starts: x.core("start"),
    "boil lasts": x.choice("boil", { boil: x.core("boilMinutes"), "no boil": "0" }),
    "boil begins": at(lastStep, before),
    heating: `SUM(${all(heating)})`,
    "flame out": `${figure("boil begins")}+${figure("boil lasts")}`,
    "stirred in": `${figure("flame out")}+IF(COUNTIFS(${all(part)},${quote(boiledHop)},${all(minutes)},"<=0")>0,${stirringMinutes},0)`,
    stand: `OR(${x.core("standMinutes")}>0,COUNTIF(${all(part)},"stand")>0)`,
    "hops stand from": `${figure("stirred in")}+${x.core("standAfter")}`,
    "after from": `IF(${figure("stand")},${figure("hops stand from")}+MAX(${x.core("standMinutes")},${stirringMinutes}),${figure("stirred in")})`,
    done: `${figure("after from")}+${at(lastStep, after)}`,
  };
  return figures.map((name) => `=${found[name]}`);
}

/** "" or "cool to 80 °C, ". */
function coolTo(x: PlainArguments): string {
  const given = x.given("standTemperature");
  if (given === false) return '""';
  const unit = quantity("temperature").unit;
  const degrees = x.byUnits(quote(` ${unit.metric}, `), quote(` ${unit.us}, `));
  const words = `"cool to "&ROUND(${x.show("temperature", x.core("standTemperature"))},0)&${degrees}`;
  return given === true ? words : `IF(${given},${words},"")`;
}

function ownLinesOf({ x, figure, boils }: Day): string[][] {
  return [
    [
      `=IF(${boils},${num(turn["boil begins"])},"")`,
      `=${figure("boil begins")}`,
      "=0",
      `="${ownLines["boil begins"]}start the "&${figure("boil lasts")}&"-minute clock"`,
      '=""',
      `=${quote(ownCautions["boil begins"])}`,
    ],
    [
      `=${num(turn["flame out"])}`,
      `=${figure("flame out")}`,
      `=IF(${boils},${figure("boil lasts")},"")`,
      `=IF(${boils},${quote(ownLines["flame out"])},${quote(ownLines["no boil"])})`,
      '=""',
      `=IF(${boils},${quote(ownCautions["flame out"])},${quote(ownCautions["no boil"])})`,
    ],
    [
      `=IF(${figure("stand")},${num(turn.stand)},"")`,
      `=${figure("stirred in")}`,
      '=""',
      `="${ownLines.stand}"&${coolTo(x)}&"keep it "&${x.core("standMinutes")}&" min"`,
      '=""',
      `=${quote(ownCautions.stand)}`,
    ],
    [`=${num(turn.done)}`, `=${figure("done")}`, '=""', `=${quote(ownLines.done)}`, '=""', '=""'],
  ];
}

/** The key of what is due in the boil: those with most of it left first. */
const inBoil = (wanted: string, left: string, place: number): string =>
  `IF(${wanted}>0,${num(turn.boiling)}+(1000-${left})*1E8,${num(turn["at flame-out"])})+${place}`;

function stepLine({ at, figure, boils }: Day, { range, column, rows }: Table, index: number): string[] {
  const row = firstStep + index;
  const cell = (name: string): string => cellIn(range, index + 1, column(name) ?? 0);
  const own = (place: number): string => at(row, place);
  const above = (place: number): string => (index === 0 ? "0" : at(row - 1, place));
  const isLast = index === rows - 1 ? "TRUE" : `COUNTIF(${columnOf(at, part, row + 1, firstStep + rows - 1)},"before")=0`;
  const left = `MIN(${own(minutes)},IF(${boils},${figure("boil lasts")},${figure("heating")}))`;
  const byPart = (ofBefore: string, ofBoil: string, ofAfter: string): string =>
    `=IF(${own(part)}="before",${ofBefore},IF(${own(part)}="boil",${ofBoil},IF(${own(part)}="after",${ofAfter},"")))`;
  const words = (text: string): string => `=${within(range, index + 1, text)}`;
  return [
    byPart(
      `IF(${isLast},${num(turn.heating)},${num(turn.before)}+${index + 1})`,
      inBoil(own(minutes), left, index + 1),
      `${num(turn.after)}+${index + 1}`,
    ),
    byPart(above(before), `${figure("flame out")}-${left}`, `${figure("after from")}+${above(after)}`),
    `=IF(AND(${own(part)}="boil",${boils}),${figure("boil lasts")}-${left},"")`,
    words(`${cell("step")}&""`),
    '=""',
    column("caution") === undefined ? '=""' : words(`${cell("caution")}&""`),
    words(`IF(${isFilled(cell("step"))},LOWER(TRIM(${cell("part")})),"")`),
    `=IF(${own(part)}="","",N(${cell("minutes")}))`,
    `=${above(before)}+IF(${own(part)}="before",${own(minutes)},0)`,
    `=${above(after)}+IF(${own(part)}="after",${own(minutes)},0)`,
    `=IF(${own(part)}="before",IF(${isLast},${own(minutes)},0),0)`,
  ];
}

/** What stands for a hop that boils, among the places where hops go. */
const boiledHop = "hop in the boil";

function hopLine({ x, at, figure, boils }: Day, { range, column }: Table, index: number, row: number): string[] {
  const cell = (name: string): string => cellIn(range, index + 1, column(name) ?? 0);
  const own = (place: number): string => at(row, place);
  const place = index + 1;
  const byPlace = (boiled: string, pieces: Readonly<Record<HopPlace, string>>): string =>
    `=IF(${own(part)}="","",IF(${own(part)}=${quote(boiledHop)},${boiled},${hopPlaces
      .filter((word) => word !== "dry")
      .reduceRight((rest, word) => `IF(${own(part)}=${quote(word)},${pieces[word]},${rest})`, pieces.dry)}))`;
  const anything = Array.from({ length: range.columns }, (_, at) => isFilled(cellIn(range, place, at))).join(",");
  const name = `IF(TRIM(${cell("hop")}&"")="","hops",${cell("hop")})`;
  const words = (added: number | HopPlace): string => {
    const [first = "", last = ""] = hopWords(gap, added).split(gap);
    return `${quote(first)}&${name}${last === "" ? "" : `&${quote(last)}`}`;
  };
  const mass = x.show("smallMass", `${cell("mass")}*${x.scale("smallMass")}`);
  const longer = x.choice("longerHops", { refuse: `N(${cell("minutes")})`, begin: `MIN(N(${cell("minutes")}),${figure("boil lasts")})` });
  return [
    byPlace(inBoil(own(minutes), own(minutes), hopsAfterSteps + place), {
      "first wort": `${num(turn["first wort"])}+${place}`,
      stand: `${num(turn.stand)}+${place}`,
      dry: `${num(turn.dry)}+${place}`,
    }),
    byPlace(`${figure("flame out")}-${own(minutes)}`, {
      "first wort": `${figure("boil begins")}-${figure("heating")}`,
      stand: figure("hops stand from"),
      dry: '""',
    }),
    `=IF(AND(${own(part)}=${quote(boiledHop)},${boils}),${figure("boil lasts")}-${own(minutes)},"")`,
    byPlace(words(0), { "first wort": words("first wort"), stand: words("stand"), dry: words("dry") }),
    `=IF(${own(part)}="","",IF(N(${cell("mass")})=0,"",${amountText(x, mass)}))`,
    byPlace(`IF(${own(minutes)}=0,${quote(hopCaution(0))},${quote(hopCaution(1))})`, {
      "first wort": quote(hopCaution("first wort")),
      stand: quote(hopCaution("stand")),
      dry: quote(hopCaution("dry")),
    }),
    `=${within(range, place, `IF(OR(${anything}),IF(ISTEXT(${cell("minutes")}),IF(TRIM(${cell("minutes")})="",${quote(boiledHop)},LOWER(TRIM(${cell("minutes")}))),${quote(boiledHop)}),"")`)}`,
    `=IF(${own(part)}=${quote(boiledHop)},${longer},"")`,
  ];
}

const gap = "\u0000";

/** "28 g", "7.5 g", "1.00 oz", as the call says it. */
const amountText = (x: PlainArguments, mass: string): string =>
  x.byUnits(`IF(${mass}<10,ROUND(${mass},1),ROUND(${mass},0))&" g"`, `FIXED(${mass},2,TRUE)&" oz"`);

const timeline: PlainForm = {
  holds: (x) => {
    const hops = x.operand("hops").kind === "range" ? x.column("hops", "minutes") : undefined;
    const lasts = x.choice("boil", { boil: x.core("boilMinutes"), "no boil": "0" });
    return [
      `OR(${x.core("start")}<1,${x.core("start")}>=${firstDate})`,
      `ROWS(${x.range("steps").all})<=${table(x, "steps").rows}`,
      ...(hops === undefined
        ? []
        : [`ROWS(${hops})<=${table(x, "hops").rows}`, x.choice("longerHops", { refuse: `MAX(${hops})<=${lasts}`, begin: "TRUE" })]),
    ];
  },
  size: (x) => ({
    rows: ownRows + ["steps", "hops"].reduce((rows, name) => rows + (x.operand(name).kind === "range" ? table(x, name).rows : 0), 0),
    columns: 5,
  }),
  workings,
  sum: (x, { row, column }, at) => {
    const rows = table(x, "steps").rows + (x.operand("hops").kind === "range" ? table(x, "hops").rows : 0) + ownRows;
    const all = (place: number): string => columnOf(at, place, firstEvent, firstEvent + rows - 1);
    const place = at(firstEvent + row, order);
    const shown = (of: number): string => `INDEX(${all(of)},${place})`;
    const starts = at(1, figures.indexOf("starts"));
    const cell = column === 0 ? `IF(${shown(minute)}="","",${starts}+${shown(minute)}/1440)` : shown(grid[column] ?? what);
    return `IF(${place}="","",${cell})`;
  },
};

/** The columns of the answer. */
const grid = [minute, boilMinute, what, amount, caution];

export const dayForms = { "DAY.TIMELINE": timeline } satisfies Record<string, PlainForm>;
