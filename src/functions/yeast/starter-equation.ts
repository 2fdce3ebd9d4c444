/** A file of its own: the script of the worksheet functions leaves it out, since no call needs its words. */
export const starterEquation =
  "V (L) = cells_now / 100 × (growth / 1.52)^(1 / 0.43), at least 0.5 L for each 100 × 10⁹ cells, and at least (cells_wanted − cells_now) / 1.4 per gram of extract; growth = cells_wanted / cells_now, its part above 1 halved where the culture is stirred";
