/** What the letters in the equations stand for, where they mean the same in all of them and the equation does not say it. */
const symbols: Readonly<Record<string, string>> = {
  SG: "specific gravity 20/20 °C",
  P: "extract of the wort, °P",
  OG: "original gravity",
  FG: "final gravity",
  OE: "original extract: the original gravity in °P",
  AE: "apparent extract: the gravity now, or at the end, in °P",
  RE: "real extract, °P: what is left besides water and alcohol",
  ABW: "alcohol, % by mass",
  ABV: "alcohol, % by volume",
  MCU: "colour of the malts, weighted by mass, in the volume",
  V: "volume",
  B: "steepness of the fall, per day",
  M: "day on which half of the fall is done",
  Σ: "sum over all rows",
};

/** A function's equation, a line for each of its parts, and what its letters stand for. */
export function equationLines(equation: string): {
  readonly lines: readonly string[];
  readonly legend: readonly { readonly symbol: string; readonly meaning: string }[];
} {
  const legend = Object.entries(symbols).flatMap(([symbol, meaning]) =>
    new RegExp(`(?<![\\p{L}\\d.°])${symbol}(?![\\p{L}\\d.(])`, "u").test(equation) ? [{ symbol, meaning }] : [],
  );
  return { lines: equation.split("; "), legend };
}
