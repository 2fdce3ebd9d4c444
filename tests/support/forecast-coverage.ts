import { call } from "../../src/functions/call";
import { logForecast } from "../../src/functions/log/forecast";
import { truthFamilies, truthLog, uniformDraws } from "./fermentation-truths";

/** How often the forecast's ± held what was true, in one family of fermentations. */
export interface Coverage {
  readonly family: string;
  readonly logs: number;
  readonly answered: number;
  /** Shares of the logs that were answered. */
  readonly finalInside: number;
  readonly dayInside: number;
  readonly dayBeforeNewest: number;
  /** Medians. */
  readonly finalPlusOrMinus: number;
  readonly dayPlusOrMinus: number;
  readonly daysToGo: number;
  /** The same between 65 and 75 % of the way. */
  readonly finalPlusOrMinusAt70: number;
}

const median = (values: readonly number[]): number => [...values].sort((one, other) => one - other)[Math.floor(values.length / 2)] ?? NaN;

/** Asks the worksheet function about made-up logs of a family, each with the gravity expected beforehand. */
export function forecastCoverage(family: string, logs: number, seed: number): Coverage {
  const uniform = uniformDraws(seed);
  const truth = truthFamilies[family];
  if (truth === undefined) throw new Error(`no family "${family}"`);
  const asked = Array.from({ length: logs }, () => {
    const log = truthLog(truth, uniform);
    const [, final, day] = call(logForecast, [
      log.readings.map((reading) => [reading.day]),
      log.readings.map((reading) => [reading.gravity]),
      log.originalGravity,
      log.expectedGravity,
    ]);
    return { log, newest: log.readings.at(-1)?.day ?? 0, final: final?.slice(1), day: day?.slice(1) };
  });
  const answers = asked.flatMap(({ log, newest, final, day }) => {
    const figures = [...(final ?? []), ...(day ?? [])];
    return figures.length === 4 && figures.every((figure) => typeof figure === "number")
      ? [{ log, newest, figures: figures as [number, number, number, number] }]
      : [];
  });
  const share = (holds: (answer: (typeof answers)[number]) => boolean): number => answers.filter(holds).length / answers.length;
  return {
    family,
    logs,
    answered: answers.length,
    finalInside: share(({ log, figures: [value, plusOrMinus] }) => Math.abs(value - log.finalGravity) <= plusOrMinus),
    dayInside: share(({ log, figures: [, , value, plusOrMinus] }) => Math.abs(value - log.finishedOn) <= plusOrMinus),
    dayBeforeNewest: answers.filter(({ newest, figures }) => figures[2] < newest).length,
    finalPlusOrMinus: median(answers.map(({ figures }) => figures[1])),
    dayPlusOrMinus: median(answers.map(({ figures }) => figures[3])),
    daysToGo: median(answers.map(({ log, newest }) => log.finishedOn - newest)),
    finalPlusOrMinusAt70: median(answers.filter(({ log }) => log.share > 0.65 && log.share < 0.75).map(({ figures }) => figures[1])),
  };
}

/** One seed for the tests and for the table that they print. */
export const coverageSeed = 20261130;
export const coverageLogs = 200;

export function coverageReadme(): string {
  const rows = Object.keys(truthFamilies).map((family) => forecastCoverage(family, coverageLogs, coverageSeed));
  const percent = (share: number): string => `${Math.round(100 * share)} %`;
  return `# How often the ± of GYLE.LOG.FORECAST holds

${coverageLogs} made-up logs of each kind of fermentation (\`tests/support/fermentation-truths.ts\`), each read until 40 to 80 % of its fall was done: daily or at
odd times, with errors of half a line or rounded to a line, the attenuation expected wrong by up to eight points. None of the kinds is the
curve that is fitted; the first two are limits of it. Written by \`npm run generate\`; \`tests/core/log/forecast-coverage.test.ts\` holds the
bars: final gravity inside its ± in 90 % of the logs and more, the day in 80 %, never a day before the newest reading; and so that a
useless ± does not pass: median ± of the final gravity at 70 % of the way 0.006 or less, median ± of the day no more than 1.1 times the
days that are to go, and no more than a fifth of the logs called too early.

| kind | too early | final gravity inside | median ± | at 70 % | day inside | median ±, days | days to go | in the past |
|---|---|---|---|---|---|---|---|---|
${rows.map((row) => `| ${row.family} | ${percent(1 - row.answered / row.logs)} | ${percent(row.finalInside)} | ${row.finalPlusOrMinus.toFixed(4)} | ${row.finalPlusOrMinusAt70.toFixed(4)} | ${percent(row.dayInside)} | ${row.dayPlusOrMinus.toFixed(1)} | ${row.daysToGo.toFixed(1)} | ${row.dayBeforeNewest} |`).join("\n")}
`;
}
