/**
 * Density of sucrose solutions in water at 20 °C, kg/m3, for 0, 1, 2 … % sucrose by mass: "Zależność gęstości wodnego
 * roztworu sacharozy od stężenia", tables of the II Pracownia Fizyczna, Uniwersytet Mikołaja Kopernika, Toruń, read on
 * 30 November 2026 and typed in. An older determination than the equation in `src/core`; nothing here comes from there.
 */
const density20C: readonly number[] = [
  998.23, 1002.09, 1005.99, 1009.91, 1013.86, 1017.84, 1021.85, 1025.87, 1029.93, 1034.02, 1038.13, 1042.28, 1046.46, 1050.66, 1054.9,
  1059.16, 1063.45, 1067.78, 1072.13, 1076.53, 1080.94, 1085.4, 1089.9, 1094.41, 1098.96, 1103.54, 1108.17, 1112.82, 1117.5, 1122.23,
  1126.98, 1131.76, 1136.59, 1141.45, 1146.31, 1151.27, 1156.24, 1161.24,
];

/** kg/L, read off between two lines of the table. */
export function sucroseKgPerL(massFraction: number): number {
  const line = Math.floor(100 * massFraction);
  const [lower, upper] = [density20C[line], density20C[line + 1]];
  if (lower === undefined || upper === undefined) throw new Error(`the table of sucrose solutions ends before ${100 * massFraction} %`);
  return (lower + (100 * massFraction - line) * (upper - lower)) / 1000;
}

/** Volume, L at 20 °C, of so much water with so much sugar in it. */
export const sucroseSolutionL = (waterKg: number, sugarKg: number): number =>
  (waterKg + sugarKg) / sucroseKgPerL(sugarKg / (waterKg + sugarKg));

/** Mass, kg, of a solution that fills so many litres with so much sugar in it, found by trial. */
export function sucroseSolutionKg(volumeL: number, sugarKg: number): number {
  let mass = volumeL;
  for (let trial = 0; trial < 60; trial += 1) mass = volumeL * sucroseKgPerL(sugarKg / mass);
  return mass;
}

/** Specific gravity 20/20 °C: a litre against a litre of water. */
export const specificGravity = (massFraction: number): number => sucroseKgPerL(massFraction) / sucroseKgPerL(0);
