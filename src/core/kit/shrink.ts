/** What is known of a figure of brewing kit before any batch was brewed on it, in the unit of the figure. */
export interface Typical {
  readonly value: number;
  /** Standard deviation from one brewer's kit to another's. */
  readonly betweenKits: number;
  /** Standard deviation from one batch to the next on the same kit, measuring errors included. */
  readonly betweenBatches: number;
}

export interface Learned {
  readonly value: number;
  /** Half the width of the interval that holds the kit's true figure with 95 % probability. */
  readonly plusMinus: number;
  readonly batches: number;
}

/** The scatter assumed for a kit weighs as much as so many batches of its own. */
const scatterWeight = 4;

/**
 * A figure of one kit from what its batches told, drawn toward the typical value while there are few of them: the mean
 * of the two, each weighted by its precision 1/variance (normal mean with a normal prior: A. Gelman et al., Bayesian
 * Data Analysis, 3rd ed., 2013, sec. 2.5; cited from memory). The scatter between batches is the assumed one at first
 * and the kit's own as batches come in (weighted mean of the variances, ibid. sec. 2.6).
 *
 * @param values one figure from each batch, in the unit of `typical`; none: the typical value with its spread
 */
export function learned(values: readonly number[], typical: Typical): Learned {
  const batches = values.length;
  const priorPrecision = 1 / typical.betweenKits ** 2;
  if (batches === 0) return { value: typical.value, plusMinus: halfWidth(priorPrecision), batches };
  const mean = values.reduce((sum, value) => sum + value, 0) / batches;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const scatterVariance = (scatterWeight * typical.betweenBatches ** 2 + squares) / (scatterWeight + batches - 1);
  const dataPrecision = batches / scatterVariance;
  const precision = priorPrecision + dataPrecision;
  return { value: (priorPrecision * typical.value + dataPrecision * mean) / precision, plusMinus: halfWidth(precision), batches };
}

const halfWidth = (precision: number): number => 1.959964 / Math.sqrt(precision);
