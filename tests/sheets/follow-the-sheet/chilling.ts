/**
 * A kettle with a coil in it, second by second: heat leaves the stirred wort and turns up in the water that runs through. Nothing here is
 * taken from the code. Kilograms, kilojoules, °C, minutes.
 */

/** kJ/(kg K): water (any steam table), and sugar dissolved in it (from 3.9 kJ/(kg K) of a wort of 12 °P; from memory). */
const [waterHeat, sugarHeat] = [4.19, 1.8] as const;
const waterKgPerL = 0.9982;

export interface Coil {
  readonly kwPerK: number;
  readonly tapC: number;
  readonly litresPerMinute: number;
}

export interface Kettle {
  readonly waterKg: number;
  readonly sugarKg: number;
}

/** The coil cut across: in each piece the water is as warm as what comes out of the one before. */
const pieces = 60;

/** What the wort is like at the end, and each second on the way; and how much heat left it and arrived in the water. */
export interface Chilled {
  readonly endsAtC: number;
  readonly everySecondC: readonly number[];
  readonly givenKj: number;
  readonly takenKj: number;
}

export function chilled({ waterKg, sugarKg }: Kettle, fromC: number, minutes: number, coil: Coil): Chilled {
  const heatKjPerK = waterKg * waterHeat + sugarKg * sugarHeat;
  const streamKjPerK = (coil.litresPerMinute / 60) * waterKgPerL * waterHeat;
  const everySecondC: number[] = [];
  let [wort, taken] = [fromC, 0];
  for (let second = 0; second < Math.round(minutes * 60); second += 1) {
    everySecondC.push(wort);
    let water = coil.tapC;
    for (let piece = 0; piece < pieces; piece += 1) {
      // Half of what the piece passes on warms the water before the middle of it.
      const passed = coil.kwPerK / pieces / streamKjPerK;
      water += (wort - water) * (passed / (1 + passed / 2));
    }
    taken += (water - coil.tapC) * streamKjPerK;
    wort -= ((water - coil.tapC) * streamKjPerK) / heatKjPerK;
  }
  return { endsAtC: wort, everySecondC, givenKj: (fromC - wort) * heatKjPerK, takenKj: taken };
}

/**
 * Share of the alpha acid that has become bitter once the hops have seen these temperatures, a second of each: M. G. Malowicki and
 * T. H. Shellhammer, J. Agric. Food Chem. 53 (2005) 4434, by plain steps.
 */
export function madeBitter(everySecondC: readonly number[]): number {
  let [alpha, bitter] = [1, 0];
  for (const celsius of everySecondC) {
    const kelvin = celsius + 273.15;
    const made = (7.9e11 * Math.exp(-11858 / kelvin) * alpha) / 60;
    bitter += made - (4.1e12 * Math.exp(-12994 / kelvin) * bitter) / 60;
    alpha -= made;
  }
  return bitter;
}
