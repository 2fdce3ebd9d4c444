/** One chilling: how long, how far, from what boil, and the gravity in the kettle. */
interface Chilling {
  readonly minutes: number;
  readonly toC: number;
  readonly gravity: number;
  readonly boilsAtC?: number;
}

/**
 * IBU that hops gain while the wort chills, as a second hand calculates it: the rates of M. G. Malowicki and T. H. Shellhammer,
 * J. Agric. Food Chem. 53 (2005) 4434, along Newton's law of cooling towards 15 °C, by plain steps of a second; one factor
 * makes an hour at 100 °C (0.4759 of the alpha acid) equal Tinseth's.
 *
 * @param hops milligrams of alpha acid in a litre, and minutes in the boil
 */
export function gainedInChilling(
  { minutes, toC, gravity, boilsAtC = 100 }: Chilling,
  hops: readonly (readonly [alphaMgPerL: number, boiledMinutes: number])[],
): number {
  const k1 = (celsius: number) => 7.9e11 * Math.exp(-11858 / (celsius + 273.15));
  const k2 = (celsius: number) => 4.1e12 * Math.exp(-12994 / (celsius + 273.15));
  const step = 1 / 60;
  const room = 15;
  const gain = (boiled: number): number => {
    let [alpha, iso] = [1, 0];
    for (let t = 0; t < boiled; t += step)
      [alpha, iso] = [alpha - step * k1(boilsAtC) * alpha, iso + step * (k1(boilsAtC) * alpha - k2(boilsAtC) * iso)];
    const before = iso;
    for (let t = 0; t < minutes; t += step) {
      const celsius = room + (boilsAtC - room) * ((toC - room) / (boilsAtC - room)) ** (t / minutes);
      [alpha, iso] = [alpha - step * k1(celsius) * alpha, iso + step * (k1(celsius) * alpha - k2(celsius) * iso)];
    }
    return iso - before;
  };
  const tinsethHour = (1.65 * 0.000125 ** (gravity - 1) * (1 - Math.exp(-2.4))) / 4.15;
  return hops.reduce((sum, [alphaMgPerL, boiled]) => sum + (alphaMgPerL * tinsethHour * gain(boiled)) / 0.4759, 0);
}
