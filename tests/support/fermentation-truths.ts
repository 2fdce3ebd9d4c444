/**
 * Fermentations that are not the curve we fit: what a log's forecast is held against. Each family gives the share of the
 * fall that is done on a day since pitching, 0 to 1, rising. Nothing here comes from `src/core`.
 */

/** Uniform draws from 0 to 1, the same ones every time: xorshift32 (G. Marsaglia, J. Stat. Software 8(14), 2003). */
export function uniformDraws(seed: number): () => number {
  let state = seed | 0 || 1;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 4294967296;
  };
}

/** A normal deviate by the sum of twelve uniform ones, good to four standard deviations. */
export const normalOf = (uniform: () => number): number => Array.from({ length: 12 }, uniform).reduce((sum, value) => sum + value, -6);

export type ShareDone = (day: number) => number;
export type Family = (uniform: () => number) => ShareDone;

const between = (uniform: () => number, low: number, high: number): number => low + (high - low) * uniform();

/** Gompertz's curve: fast at first, with a long tail. (Our family has it as a limit, so it counts for less.) */
const gompertz: Family = (uniform) => {
  const [rate, middle] = [between(uniform, 0.5, 1.3), between(uniform, 1.2, 3.5)];
  return (day) => Math.exp(-Math.exp(-rate * (day - middle)));
};

/** After a lag the same share of what is left goes every day, as with a large pitch. (A limit of our family as well.) */
const firstOrderWithLag: Family = (uniform) => {
  const [rate, lag] = [between(uniform, 0.25, 0.8), between(uniform, 0.3, 1.5)];
  return (day) => (day <= lag ? 0 : 1 - Math.exp(-rate * (day - lag)));
};

/** Most of the sugar goes in one sweep, the rest many times more slowly. */
const slowTail: Family = (uniform) => {
  const [rate, middle, slow] = [between(uniform, 1.2, 2.5), between(uniform, 1.3, 3), between(uniform, 0.1, 0.25)];
  const slowRate = rate * between(uniform, 0.18, 0.4);
  return (day) =>
    (1 - slow) / (1 + Math.exp(-rate * (day - middle))) + (day <= middle ? 0 : slow * (1 - Math.exp(-slowRate * (day - middle))));
};

/** The cellar grows colder or warmer on the way: time runs slower or faster from a day on. */
const temperatureStep: Family = (uniform) => {
  const [rate, middle, step, factor] = [
    between(uniform, 0.9, 2),
    between(uniform, 1.5, 4),
    between(uniform, 0.4, 1),
    between(uniform, 0.55, 1.7),
  ];
  const at = middle * step;
  return (day) => {
    const warped = day <= at ? day : at + factor * (day - at);
    return 1 / (1 + Math.exp(-rate * (warped - middle))) ** 1.4;
  };
};

/** Two sweeps: the second sugar waits until the first is gone. */
const diauxic: Family = (uniform) => {
  const [rate, middle, share, gap] = [
    between(uniform, 1.5, 3),
    between(uniform, 1.2, 2.5),
    between(uniform, 0.55, 0.8),
    between(uniform, 1, 2.5),
  ];
  const second = rate * between(uniform, 0.5, 1);
  return (day) => share / (1 + Math.exp(-rate * (day - middle))) + (1 - share) / (1 + Math.exp(-second * (day - middle - gap)));
};

/** Hill's curve: its tail falls as a power of time, more slowly than any exponential. */
const powerTail: Family = (uniform) => {
  const [power, half] = [between(uniform, 3, 5), between(uniform, 1.8, 4)];
  return (day) => (day <= 0 ? 0 : day ** power / (day ** power + half ** power));
};

/**
 * Glucose, maltose and maltotriose one after the other, with the growth of the yeast: the model of J. M. Engasser et al.
 * (Proc. 18th EBC Congress, 1981, 579) with the constants that D. A. Gee and W. F. Ramirez give (J. Inst. Brew. 100,
 * 1994, 321), both from memory: rates in 1/h and constants in mol/m³ as exp(a − E/RT). Each batch has its temperature, its
 * pitch and rates of its own; Runge and Kutta's fourth-order steps of a quarter of an hour carry it forward.
 */
const sugarBySugar: Family = (uniform) => {
  const kelvin = between(uniform, 284, 293);
  const arrhenius = (a: number, calories: number): number => Math.exp(a - calories / (1.987 * kelvin)) * between(uniform, 0.8, 1.25);
  const rates = [arrhenius(35.77, 22600), arrhenius(16.4, 11300), arrhenius(10.59, 7160)] as const;
  const halves = [arrhenius(-121.3, -68600), arrhenius(-19.5, -14400), arrhenius(-26.78, -19900)] as const;
  const inhibited = [arrhenius(23.33, 10200), arrhenius(55.61, 26300)] as const;
  const yields = [0.134, 0.268, 0.402] as const;
  const molar = [0.18, 0.342, 0.504] as const;
  const begin = [between(uniform, 50, 90), between(uniform, 190, 250), between(uniform, 25, 50)];
  const pitched = between(uniform, 90, 200);
  const fall = (sugars: readonly number[]): number[] => {
    const [g = 0, m = 0, n = 0] = sugars.map((value) => Math.max(value, 0));
    const yeast = pitched + yields.reduce((sum, each, index) => sum + each * ((begin[index] ?? 0) - (sugars[index] ?? 0)), 0);
    const byGlucose = inhibited[0] / (inhibited[0] + g);
    return [
      (rates[0] * g) / (halves[0] + g),
      ((rates[1] * m) / (halves[1] + m)) * byGlucose,
      ((rates[2] * n) / (halves[2] + n)) * byGlucose * (inhibited[1] / (inhibited[1] + m)),
    ].map((rate) => -rate * yeast);
  };
  const hours = 0.25;
  const mass = (sugars: readonly number[]): number =>
    sugars.reduce((sum, value, index) => sum + Math.max(value, 0) * (molar[index] ?? 0), 0);
  const lag = between(uniform, 0, 0.6);
  const course = [0];
  for (let sugars = begin; course.length < (60 * 24) / hours && (course.at(-1) ?? 0) < 0.9999;) {
    const moved = (slope: readonly number[], by: number) => sugars.map((value, index) => value + by * (slope[index] ?? 0));
    const one = fall(sugars);
    const two = fall(moved(one, hours / 2));
    const three = fall(moved(two, hours / 2));
    const four = fall(moved(three, hours));
    sugars = sugars.map(
      (value, index) => value + (hours / 6) * ((one[index] ?? 0) + 2 * (two[index] ?? 0) + 2 * (three[index] ?? 0) + (four[index] ?? 0)),
    );
    course.push(1 - mass(sugars) / mass(begin));
  }
  return (day) => {
    const place = Math.max(day - lag, 0) * (24 / hours);
    const before = Math.min(Math.floor(place), course.length - 1);
    const after = Math.min(before + 1, course.length - 1);
    return (course[before] ?? 0) + (place - before) * ((course[after] ?? 0) - (course[before] ?? 0));
  };
};

/** By the name that the table of coverage shows. */
export const truthFamilies: Readonly<Record<string, Family>> = {
  Gompertz: gompertz,
  "first order with a lag": firstOrderWithLag,
  "slow tail": slowTail,
  "temperature step": temperatureStep,
  "two sweeps": diauxic,
  "power tail": powerTail,
  "sugar by sugar": sugarBySugar,
};

/** One made-up batch: what was true, and what was read until the log ended. */
export interface TruthLog {
  readonly originalGravity: number;
  readonly finalGravity: number;
  /** What the brewer expected: the yeast's attenuation is known to about five points. */
  readonly expectedGravity: number;
  /** First day within 0.001 of the end. */
  readonly finishedOn: number;
  /** Share of the fall at the newest reading. */
  readonly share: number;
  readonly readings: readonly { readonly day: number; readonly gravity: number }[];
}

/** How a log is read: daily or at odd times; with normal errors of half a line, or rounded to a line of 0.001. */
export function truthLog(family: Family, uniform: () => number, from = 0.4, to = 0.8): TruthLog {
  for (;;) {
    const share = family(uniform);
    const originalGravity = 1 + between(uniform, 0.04, 0.075);
    const attenuation = between(uniform, 0.68, 0.82);
    const finalGravity = originalGravity - attenuation * (originalGravity - 1);
    const expectedGravity = originalGravity - (attenuation + between(uniform, -0.08, 0.08)) * (originalGravity - 1);
    const end = between(uniform, from, to);
    const [daily, rounded, hour] = [uniform() < 0.5, uniform() < 0.5, uniform()];
    const gravityOn = (day: number): number => originalGravity - share(day) * (originalGravity - finalGravity);
    const read = (day: number) => {
      const seen = gravityOn(day) + (rounded ? 0.0003 : 0.0005) * normalOf(uniform);
      return { day, gravity: rounded ? Math.round(seen * 1000) / 1000 : seen };
    };
    const readings = [read(0)];
    for (let day = daily ? 1 : 0.5 + hour; share(day) <= end + 0.1 && readings.length < 40; day += daily ? 1 : between(uniform, 0.4, 1.6)) {
      // The last reading lies between 40 and 80 % of the way, at or below the end drawn.
      if (share(day) > end) break;
      readings.push(read(day));
    }
    const newest = readings.at(-1)?.day ?? 0;
    const done = share(newest);
    let finishedOn = newest;
    while (gravityOn(finishedOn) - finalGravity > 0.001 && finishedOn < 90) finishedOn += 0.01;
    if (done >= from && readings.length >= 3 && finishedOn < 45)
      return { originalGravity, finalGravity, expectedGravity, finishedOn, share: done, readings };
  }
}
