/** A whole number from 0 to below a bound, each as likely as any other. */
export type Draw = (below: number) => number;

/** By chance that nobody can foretell. */
export const byChance: Draw = (below) => {
  // What is left over above a whole multiple would make small numbers likelier: it is drawn again.
  const [most] = [Math.floor(2 ** 32 / below) * below];
  for (;;) {
    const [drawn = 0] = crypto.getRandomValues(new Uint32Array(1));
    if (drawn < most) return drawn % below;
  }
};

function shuffled<T>(things: readonly T[], draw: Draw): T[] {
  const order = [...things];
  for (let last = order.length - 1; last > 0; last -= 1) {
    const other = draw(last + 1);
    [order[last], order[other]] = [order[other] as T, order[last] as T];
  }
  return order;
}

const digitsOf = (code: number): number[] => [...String(code)].map(Number);

/** Three different digits without 0, which reads as a letter; none that counts up or down, which would tell an order. */
const allowed = Array.from({ length: 900 }, (_, index) => index + 100).filter((code) => {
  const [first = 0, second = 0, third = 0] = digitsOf(code);
  const differ = first !== second && second !== third && first !== third;
  return differ && !digitsOf(code).includes(0) && !(second - first === third - second && Math.abs(second - first) === 1);
});

const differing = (one: number, other: number): number => {
  const digits = digitsOf(other);
  return digitsOf(one).filter((digit, place) => digit !== digits[place]).length;
};

/**
 * So many three-digit codes, drawn: nothing about a beer goes into its code. Any two differ in two places at least, so that no
 * slip of the pen makes one of the other.
 *
 * @param count at most 40
 */
export function blindCodes(count: number, draw: Draw): number[] {
  const codes: number[] = [];
  for (const code of shuffled(allowed, draw)) {
    if (codes.length === count) break;
    if (codes.every((other) => differing(code, other) >= 2)) codes.push(code);
  }
  return codes;
}

/**
 * The order in which each taster gets the beers, as places in the list: over all orders of a design each beer stands equally often in
 * each place and behind each other one (E. J. Williams, Aust. J. Sci. Res. A 2, 1949, 149), for who comes after a strong
 * one is judged by it. Which beer is which in the design, and who gets which order, is drawn.
 */
export function servingOrders(beers: number, tasters: number, draw: Draw): number[][] {
  // 0, 1, n - 1, 2, n - 2, …: the steps between neighbours are all different.
  const first = Array.from({ length: beers }, (_, place) => (place % 2 === 1 ? (place + 1) / 2 : (beers - place / 2) % beers));
  const turned = Array.from({ length: beers }, (_, turn) => first.map((beer) => (beer + turn) % beers));
  // An odd number needs each order backwards as well.
  const design = beers % 2 === 0 ? turned : [...turned, ...turned.map((order) => [...order].reverse())];
  const beerOf = shuffled(
    Array.from({ length: beers }, (_, beer) => beer),
    draw,
  );
  const rows = shuffled(design, draw);
  return Array.from({ length: tasters }, (_, taster) => (rows[taster % rows.length] ?? first).map((place) => beerOf[place] ?? place));
}
