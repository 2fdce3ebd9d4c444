/** The second word of a function's name: where in the brewery it belongs. In the registry's order. */
export const places: Readonly<Record<string, string>> = {
  WORT: "Wort: sugar, gravity and colour",
  HOPS: "Hops: bitterness",
  WATER: "Water: how much, how hot, what is in it",
  MASH: "Mash: its pH, its room, what runs off",
  HEAT: "Heat: warming and chilling",
  CLEAN: "Cleaning and sanitising",
  YEAST: "Yeast: how many cells, how far they go",
  LOG: "Log: reading a fermentation",
  BEER: "Beer: strength, body, colour, style",
  PACK: "Packaging: sugar, gas, bottles and kegs",
  TASTE: "Tasting: whether anybody can tell",
  DAY: "Brew day: the clock",
  GAUGE: "Gauge: how sure a result is",
};

export const placeOf = (id: string): string => id.split(".")[0] ?? "";
