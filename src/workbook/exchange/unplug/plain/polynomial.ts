/**
 * Polynomials through our own equations where these cannot be turned round in one formula: the equation is asked at
 * Chebyshev's points of a range, and the powers that go through all of them become an array of constants. What they
 * miss between the points is far below what is asked of a plain formula, and the tests measure it.
 */

/** Part of the number line, brought to 0.1 … 1: powers of 0 would be an error in Excel. */
export interface Span {
  readonly from: number;
  readonly to: number;
  readonly degree: number;
}

const unscaled = ({ from, to }: Span, value: number): number => from + ((value - 0.1) / 0.9) * (to - from);

function nodes({ degree }: Span): number[] {
  return Array.from({ length: degree + 1 }, (_, index) => 0.55 + 0.45 * Math.cos((Math.PI * (2 * index + 1)) / (2 * degree + 2)));
}

/** Powers, lowest first, of the polynomial through points (Newton's divided differences, multiplied out). */
function through(xs: readonly number[], ys: readonly number[]): number[] {
  const differences = [...ys];
  for (let order = 1; order < xs.length; order += 1) {
    for (let index = xs.length - 1; index >= order; index -= 1) {
      differences[index] = ((differences[index] ?? 0) - (differences[index - 1] ?? 0)) / ((xs[index] ?? 0) - (xs[index - order] ?? 0));
    }
  }
  let powers: number[] = [];
  for (let index = xs.length - 1; index >= 0; index -= 1) {
    // powers × (x − node) + difference
    const shifted = [0, ...powers];
    powers.forEach((power, at) => (shifted[at] = (shifted[at] ?? 0) - power * (xs[index] ?? 0)));
    shifted[0] = (shifted[0] ?? 0) + (differences[index] ?? 0);
    powers = shifted.slice(0, xs.length - index);
  }
  return powers;
}

const digits = (value: number): string =>
  String(Number(value.toPrecision(15)))
    .replace("e", "E")
    .replace("E+", "E");
const upTo = (degree: number): number[] => Array.from({ length: degree + 1 }, (_, power) => power);
const scaledText = (span: Span, text: string): string =>
  `(${digits(0.1 - (0.9 * span.from) / (span.to - span.from))}+${digits(0.9 / (span.to - span.from))}*${text})`.replace("+-", "-");

/** A function of one number as a formula in `text`. */
export function polynomialText(f: (x: number) => number, span: Span, text: string): string {
  const xs = nodes(span);
  const powers = through(
    xs,
    xs.map((x) => f(unscaled(span, x))),
  );
  return `SUMPRODUCT({${powers.map(digits).join(",")}}*${scaledText(span, text)}^{${upTo(span.degree).join(",")}})`;
}

/** A function of two numbers; both texts stand once in the formula. */
export function surfaceText(f: (x: number, y: number) => number, xSpan: Span, ySpan: Span, xText: string, yText: string): string {
  const xs = nodes(xSpan);
  const ys = nodes(ySpan);
  const alongX = ys.map((y) =>
    through(
      xs,
      xs.map((x) => f(unscaled(xSpan, x), unscaled(ySpan, y))),
    ),
  );
  const rows = xs.map((_, power) =>
    through(
      ys,
      alongX.map((line) => line[power] ?? 0),
    ),
  );
  const matrix = ys.map((_, yPower) => rows.map((line) => digits(line[yPower] ?? 0)).join(",")).join(";");
  return `SUMPRODUCT({${matrix}}*${scaledText(xSpan, xText)}^{${upTo(xSpan.degree).join(",")}}*${scaledText(ySpan, yText)}^{${upTo(ySpan.degree).join(";")}})`;
}
