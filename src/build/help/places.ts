/** The second word of a function's name: where in the brewery it belongs. In the registry's order. */
export const places: Readonly<Record<string, string>> = {
  WORT: "Wort: sugar and gravity",
  HOPS: "Hops: bitterness",
  WATER: "Water: volumes, temperatures, salts",
  HEAT: "Heat: warming and chilling",
  CLEAN: "Cleaning",
  YEAST: "Yeast: how much, how far",
  LOG: "The log of readings",
  BEER: "Beer: strength, body, colour",
  PACK: "Packaging: bottles and kegs",
  DAY: "The brew day by the clock",
  GAUGE: "How sure a number is",
};

export const placeOf = (id: string): string => id.split(".")[0] ?? "";
