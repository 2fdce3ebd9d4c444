import { BrewingError } from "../brewing-error";
import { normalHypercube } from "../math/normal-draws";

/** The quantity asked about, as a function of its inputs; undefined where those inputs have no answer. */
export type Measurand = (inputs: readonly number[]) => number | undefined;

/** Largest relative disagreement between a step up and a step down that still counts as a straight line. */
export const straightWithin = 0.2;
const draws = 1000;
/** Half width of the interval that holds 95 % of a normal distribution, in standard deviations. */
const coverage = 1.96;

/**
 * The ± of a result from the ± of its inputs, taken as independent; all ± of the same kind, 19 times out of 20.
 *
 * Linear where the function is: ½ [f(x + u) − f(x − u)] for each input, added in quadrature (JCGM 100:2008, 5.1.2,
 * equation 10, and 5.1.3, note 2); at the edge of what has an answer the step to the inner side counts alone. Where the
 * steps up and down (or inwards, and half a one outwards) disagree by more than a fifth, or all inputs moved together
 * miss the straight line by that much, it is sampled: 1000 fixed draws of normal inputs, half the width of the interval
 * that holds the middle 95 % (JCGM 101:2008, 7.7; a Latin hypercube, so that few draws are good to about 3 %). Draws without
 * an answer are left out.
 *
 * @param spreads ± of each input, 0 where it is exact
 * @throws BrewingError "unsolvable" when nine of ten draws have no answer
 */
export function spreadOf(measurand: Measurand, inputs: readonly number[], spreads: readonly number[]): number {
  const here = measurand(inputs);
  if (here === undefined) throw new BrewingError("unsolvable", "there is no answer to take the ± of");
  return linearSpread(measurand, inputs, spreads, here) ?? sampledSpread(measurand, inputs, spreads);
}

/** Undefined where the function is not straight enough over the spreads. */
export function linearSpread(
  measurand: Measurand,
  inputs: readonly number[],
  spreads: readonly number[],
  here: number,
): number | undefined {
  const moved = (steps: readonly number[]) => measurand(inputs.map((value, index) => value + (steps[index] ?? 0)));
  const shares: number[] = [];
  for (const [index, spread] of spreads.entries()) {
    const alone = (direction: number) => moved(spreads.map((_, at) => (at === index ? direction * spread : 0)));
    const [up, down] = spread === 0 ? [here, here] : [alone(1), alone(-1)];
    if (up !== undefined && down !== undefined && !isStraight(up - here, here - down)) return undefined;
    if (up === undefined && down === undefined) return undefined;
    if (up === undefined || down === undefined) {
      // Half a step towards the edge tells whether the function runs away there.
      const outwards = up === undefined ? 0.5 : -0.5;
      const inner = up ?? down ?? here;
      const outer = alone(outwards);
      if (outer !== undefined && !isStraight(2 * (outer - here), here - inner)) return undefined;
    }
    shares.push(up === undefined ? here - (down ?? here) : down === undefined ? up - here : (up - down) / 2);
  }
  const together = shares.reduce((sum, share) => sum + Math.abs(share), 0);
  for (const direction of [1, -1]) {
    const corner = moved(spreads.map((spread, index) => direction * Math.sign(shares[index] ?? 0) * spread));
    if (corner !== undefined && !isStraight(direction * (corner - here), together)) return undefined;
  }
  return Math.hypot(...shares);
}

function isStraight(one: number, other: number): boolean {
  return Math.abs(one - other) <= straightWithin * Math.max(Math.abs(one), Math.abs(other));
}

/**
 * The ± by sampling, for a function that bends or breaks: half the width of the middle 95 % of the answers to fixed draws.
 *
 * @throws BrewingError "unsolvable" when nine of ten draws have no answer
 */
export function sampledSpread(measurand: Measurand, inputs: readonly number[], spreads: readonly number[]): number {
  const varied = spreads.flatMap((spread, index) => (spread > 0 ? [index] : []));
  const deviations = normalHypercube(varied.length, draws);
  const results: number[] = [];
  for (let draw = 0; draw < draws; draw++) {
    const moved = [...inputs];
    varied.forEach((index, at) => (moved[index]! += ((spreads[index] ?? 0) / coverage) * (deviations[at]?.[draw] ?? 0)));
    const result = measurand(moved);
    if (result !== undefined) results.push(result);
  }
  if (results.length < draws / 10)
    throw new BrewingError("unsolvable", "most values within the ± have no answer: the ± given is too wide, or an input stands at a limit");
  results.sort((one, other) => one - other);
  return (quantile(results, 0.975) - quantile(results, 0.025)) / 2;
}

/** Each of the sorted values stands in the middle of its share of the whole; between two, a straight line. */
function quantile(sorted: readonly number[], share: number): number {
  const place = Math.min(Math.max(share * sorted.length - 0.5, 0), sorted.length - 1);
  const below = sorted[Math.floor(place)] ?? 0;
  return below + (place % 1) * ((sorted[Math.ceil(place)] ?? below) - below);
}
