/** A term of the trade as every text of ours uses it. */
export interface TradeWord {
  readonly term: string;
  /** For somebody who has never brewed: one short sentence. */
  readonly means: string;
  /** How a sentence of ours says it, where a step may be the first to name it. */
  readonly said?: RegExp;
  /** What we once said in its place, as patterns; no text of ours says it any more (tests/words.test.ts). */
  readonly insteadOf?: readonly RegExp[];
}

/**
 * The terms that our sheets, screens and pages use, in the order of the brewing day. The page "Words of the trade" is made from it, and
 * a field whose term a beginner cannot know takes its note from here.
 */
export const tradeWords = {
  wort: { term: "Wort", means: "The sweet liquid that becomes beer once yeast has fermented it." },
  mashEfficiency: {
    term: "Mash efficiency",
    means: "How much of the sugar that the malt could give at most reaches the kettle.",
    insteadOf: [/sugar won/i],
  },
  originalGravity: {
    term: "Original gravity",
    means: "How much heavier than water the wort is before it ferments: 1.050 is five per cent heavier.",
  },
  boilOff: {
    term: "Boil-off rate",
    means: "How much water an hour of boiling drives off.",
    insteadOf: [/\bboils away$/i, /\bboils away:/i],
  },
  bitterness: { term: "Bitterness (IBU)", means: "What the hops give, in milligrams of bitter acids in a litre; 20 is mild, 40 bitter." },
  kettleLoss: {
    term: "Kettle loss (trub)",
    means: "Trub is the sludge of hops and protein that stays behind in the kettle, and the wort that stays with it.",
    said: /\btrub\b/i,
    insteadOf: [/left behind in the kettle/i],
  },
  heatingEfficiency: {
    term: "Heating efficiency",
    means: "How much of the burner's or element's heat gets into the wort.",
    insteadOf: [/share of its heat/i, /heat that gets in/i],
  },
  chillerPower: {
    term: "Chiller power",
    means: "Heat that the chiller takes away for each degree that the wort is warmer than its water.",
    insteadOf: [/heat it passes on/i],
  },
  pitch: { term: "Pitch", means: "To pitch is to add the yeast to the cooled wort.", said: /\bpitch/i },
  billionCells: {
    term: "Billion (10⁹) cells",
    means: "Yeast is counted in billions of cells: 1,000,000,000.",
    insteadOf: [/thousand million/i],
  },
  airlock: { term: "Airlock", means: "A valve of water in the lid: gas gets out, nothing gets in.", said: /\bairlock/i },
  apparentAttenuation: {
    term: "Apparent attenuation",
    means: "The share of the sugar that the yeast ferments, read from the fall of the gravity: mostly 70 to 80 %.",
    insteadOf: [/\beaten %/i, /should eat/i, /sugar eaten/i],
  },
  finalGravity: { term: "Final gravity", means: "The gravity at which fermentation stops, often 1.008 to 1.016." },
  rack: { term: "Rack", means: "To rack is to siphon beer off its yeast into another vessel.", said: /\brack(ed|ing)?\b/i },
  volumesOfCo2: {
    term: "Volumes of CO2",
    means: "Litres of carbon dioxide dissolved in each litre of beer; 2.4 is a usual ale, 3 is lively.",
  },
  targetCarbonation: {
    term: "Target carbonation",
    means: "How much gas the beer is to hold, in volumes of CO2.",
    insteadOf: [/carbonation wished/i, /it already holds/i],
  },
  priming: { term: "Priming", means: "Sugar added at bottling, which ferments in the bottle and makes the gas." },
  suffocates: {
    term: "Suffocate",
    means: "Carbon dioxide is heavier than air and collects in low, closed rooms: whoever breathes it suffocates. Air the room.",
    insteadOf: [/stifles?\b/i, /smothers?\b/i],
  },
} as const satisfies Readonly<Record<string, TradeWord>>;

/** What the terms mean that these words name, for somebody who reads them the first time. */
export const meaningsIn = (words: string): string[] =>
  Object.values<TradeWord>(tradeWords)
    .filter(({ said }) => said?.test(words))
    .map(({ term, means }) => (means.toLowerCase().includes(term.toLowerCase()) ? means : `${term}: ${means}`));

/** Plain words that gave way to plainer ones, and what is said now. */
export const retiredWords: readonly { readonly pattern: RegExp; readonly now: string }[] = [
  { pattern: /is called by it/i, now: "gets this name" },
  { pattern: /\breckon/i, now: "calculate" },
  { pattern: /\bmend(s|ed|ing)?\b/i, now: "correct, put right" },
  { pattern: /cost; of one bottle/i, now: "Total cost, per bottle" },
  { pattern: /at its end about/i, now: "Expected to finish" },
  { pattern: /as far as a scale/i, now: "Kept the same (rounded to your scale)" },
  { pattern: /take one in\b/i, now: "Import" },
  { pattern: /prices go along/i, now: "Include prices" },
  { pattern: /sheet in front/i, now: "this sheet" },
  { pattern: /nothing to complain/i, now: "no problems found" },
  { pattern: /(brought|brings?) along/i, now: "updated" },
  { pattern: /passed over/i, now: "Skipped" },
  { pattern: /glass takes? it/i, now: "hold the pressure" },
  { pattern: /wished\b/i, now: "target, wanted" },
];
