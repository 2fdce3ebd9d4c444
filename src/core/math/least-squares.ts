import { inverseOfPositiveDefinite } from "./linear";

/** A curve with parameters, and its slopes against each of them. */
export interface Model {
  readonly value: (parameters: readonly number[], x: number) => number;
  readonly gradient: (parameters: readonly number[], x: number) => readonly number[];
}

export interface Point {
  readonly x: number;
  readonly y: number;
  /** How many times over it counts; once when left out. */
  readonly weight?: number;
}

/** What is known of a parameter before any point: it counts like a point of the parameter itself. */
export interface Belief {
  readonly value: number;
  readonly weight: number;
}

/** One for each parameter; undefined where nothing is known beforehand. */
export type Beliefs = readonly (Belief | undefined)[];

export interface Bounds {
  readonly least: readonly number[];
  readonly most: readonly number[];
}

export interface LeastSquares {
  readonly parameters: readonly number[];
  /** Sum of the squared residuals. */
  readonly sumOfSquares: number;
}

/** How far a model lies from the points, and from what was known beforehand: the sum of the squared differences, each by its weight. */
export const sumOfSquares = (model: Model, parameters: readonly number[], points: readonly Point[], beliefs: Beliefs = []): number =>
  points.reduce((sum, { x, y, weight = 1 }) => sum + weight * (y - model.value(parameters, x)) ** 2, 0) +
  beliefs.reduce(
    (sum, belief, index) => (belief === undefined ? sum : sum + belief.weight * ((parameters[index] ?? 0) - belief.value) ** 2),
    0,
  );

/** Residuals this small are rounding. */
const exact = 1e-20;

/** JᵀJ and Jᵀr of the free parameters. */
export function normalEquations(
  model: Model,
  parameters: readonly number[],
  points: readonly Point[],
  free: readonly number[],
  beliefs: Beliefs = [],
) {
  const matrix = free.map(() => free.map(() => 0));
  const slope = free.map(() => 0);
  for (const { x, y, weight = 1 } of points) {
    const gradient = model.gradient(parameters, x);
    const residual = y - model.value(parameters, x);
    free.forEach((one, row) => {
      slope[row]! += weight * (gradient[one] ?? 0) * residual;
      free.forEach((other, column) => (matrix[row]![column]! += weight * (gradient[one] ?? 0) * (gradient[other] ?? 0)));
    });
  }
  free.forEach((one, row) => {
    const belief = beliefs[one];
    if (belief === undefined) return;
    slope[row]! += belief.weight * (belief.value - (parameters[one] ?? 0));
    matrix[row]![row]! += belief.weight;
  });
  return { matrix, slope };
}

/**
 * Least squares by the method of D. W. Marquardt (J. Soc. Indust. Appl. Math. 11, 1963, 431), with bounds: a parameter
 * that stands at its bound and wants beyond it is held for that step. Equal bounds hold a parameter for good.
 * Written out because the ready-made package is two thirds as large as all worksheet functions together; the tests
 * compare it with that package.
 */
export function leastSquares(
  model: Model,
  points: readonly Point[],
  start: readonly number[],
  { least, most }: Bounds,
  beliefs: Beliefs = [],
): LeastSquares {
  const inside = (value: number, index: number): number => Math.min(Math.max(value, least[index] ?? -Infinity), most[index] ?? Infinity);
  let parameters = start.map(inside);
  let best = sumOfSquares(model, parameters, points, beliefs);
  let damping = 1e-3;
  for (let step = 0; step < 200 && damping < 1e12; step++) {
    const all = parameters.map((_, index) => index);
    const { matrix, slope } = normalEquations(model, parameters, points, all, beliefs);
    const free = all.filter((index) => {
      const value = parameters[index] ?? 0;
      const pull = slope[index] ?? 0;
      return (
        (matrix[index]?.[index] ?? 0) > 0 &&
        !(value <= (least[index] ?? -Infinity) && pull <= 0) &&
        !(value >= (most[index] ?? Infinity) && pull >= 0)
      );
    });
    if (free.length === 0) break;
    const damped = free.map((row) => free.map((column) => (matrix[row]?.[column] ?? 0) * (row === column ? 1 + damping : 1)));
    const inverse = inverseOfPositiveDefinite(damped);
    const tried = parameters.map((value, index) => {
      const line = inverse?.[free.indexOf(index)];
      return line === undefined
        ? value
        : inside(value + line.reduce((sum, entry, k) => sum + entry * (slope[free[k] ?? 0] ?? 0), 0), index);
    });
    const reached = inverse === undefined ? Infinity : sumOfSquares(model, tried, points, beliefs);
    if (!(reached < best)) {
      damping *= 10;
      continue;
    }
    const settled = best - reached <= 1e-10 * best || reached < exact;
    parameters = tried;
    best = reached;
    damping = Math.max(damping / 10, 1e-12);
    if (settled) break;
  }
  return { parameters, sumOfSquares: best };
}
