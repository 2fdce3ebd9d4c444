import type { Source } from "../describe";

export const checkSources: readonly Source[] = [
  { cite: "common practice", where: "working limits of bottles, on the low side, from memory; above 3.5 bar no ordinary glass" },
  {
    cite: "GB 4544; ISO 7458; ASTM C147; EN 16612",
    where:
      "new beer bottles are proofed to 12 bar for a minute; methods of the test; glass bears less than half of that when the load lasts (factor from memory)",
  },
  {
    cite: "C. J. N. Balling, Die Gährungschemie, 1865",
    where: "carbon dioxide from extract: 0.49 volumes for each 0.001; pure sugar gives 0.55",
  },
  {
    cite: "T. R. Rettich, R. Battino and E. Wilhelm, Journal of Solution Chemistry 13, 1984",
    where: "nitrogen in water, which stands for all of the neck's air: oxygen is counted as if the yeast left it",
  },
];
