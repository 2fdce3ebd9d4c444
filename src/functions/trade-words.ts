/** A term of the trade as every text of ours uses it. */
export interface TradeWord {
  readonly term: string;
  /** For somebody who has never brewed: one short sentence. */
  readonly means: string;
  /** How a sentence says it, where a beginner meets it there: the brew day explains it at the first line that does. */
  readonly saidAs?: RegExp;
  /** What we once said in its place, as patterns; no text of ours says it any more (tests/words.test.ts). */
  readonly insteadOf?: readonly RegExp[];
}

/**
 * The terms that our sheets, screens and pages use, in the order of the brewing day. The page "Words of the trade" is made from it, and
 * a field whose term a beginner cannot know takes its note from here.
 */
export const tradeWords = {
  extract: {
    term: "Malt extract",
    means: "Syrup or powder from malt that somebody has mashed for you: it is dissolved in water and boiled.",
  },
  grain: {
    term: "Grain",
    means: "Malted barley or other cereal, sprouted, dried and crushed: most beer's colour, taste and sugar come from it.",
  },
  yield: {
    term: "Yield",
    means: "How much of an ingredient's mass can dissolve as sugar at most: about 80 % of malt, nearly all of sugar.",
  },
  campden: {
    term: "Campden",
    means: "Tablets of sulphite, crushed into tap water: they take the chlorine out of it, by the dose on their label.",
  },
  steep: { term: "Steep", means: "To steep grain is to soak it in warm water, like tea, for its colour and taste.", saidAs: /\bsteep/i },
  mash: {
    term: "Mash",
    means: "To mash is to hold crushed malt in hot water until its starch has turned into sugar.",
    saidAs: /\bmash/i,
  },
  runOff: {
    term: "Run off",
    means: "To run off is to drain the sweet wort from the grain; rinsing then washes out more sugar.",
    saidAs: /\brun off\b/i,
  },
  sparge: {
    term: "Sparge",
    means: "To sparge is to rinse the drained grain with hot water for the sugar that still clings to it.",
    saidAs: /\bsparg(e|ing)\b/i,
  },
  wort: { term: "Wort", means: "The sweet liquid that becomes beer once yeast has fermented it." },
  mashEfficiency: {
    term: "Mash efficiency",
    means: "How much of the sugar that the malt could give at most reaches the kettle.",
    insteadOf: [/sugar won/i],
  },
  gravity: {
    term: "Gravity",
    means: "How heavy a liquid is beside water, which is 1.000: sugar raises it, alcohol lowers it.",
  },
  hydrometer: {
    term: "Hydrometer",
    means: "A glass float with a scale: the more sugar in the wort, the higher it floats. Read it cooled.",
    saidAs: /\bhydrometer\b/i,
  },
  refractometer: {
    term: "Refractometer",
    means: "It reads the sugar in a few drops by how they bend light; once yeast has begun, its reading must be corrected.",
  },
  plato: { term: "°P (degrees Plato)", means: "Grams of dissolved sugar in a hundred grams of wort; 12 °P is a gravity of about 1.048." },
  originalGravity: {
    term: "Original gravity",
    means: "How much heavier than water the wort is before it ferments: 1.050 is five per cent heavier.",
  },
  boilOff: {
    term: "Boil-off rate",
    means: "How much water an hour of boiling drives off.",
    insteadOf: [/\bboils away$/i, /\bboils away:/i],
  },
  firstWort: { term: "First wort", means: "Hops added as soon as the wort is in the kettle, before it boils." },
  stand: { term: "Stand", means: "Hops left to steep in hot wort after the boil, for their aroma." },
  dry: { term: "Dry (hops)", means: "Hops added to the cold beer in the fermenter, for their aroma alone." },
  rcd: {
    term: "RCD",
    means: "A safety switch that cuts the mains in an instant when current leaks, through wet equipment or a person.",
  },
  alpha: {
    term: "Alpha",
    means: "Per cent of bitter acids in a hop, printed on its packet: the higher, the fewer hops make the same bitterness.",
  },
  finings: { term: "Finings", means: "They make haze clump and sink, so that the beer becomes clear.", saidAs: /\bfinings\b/i },
  bitterness: { term: "Bitterness (IBU)", means: "What the hops give, in milligrams of bitter acids in a litre; 20 is mild, 40 bitter." },
  kettleLoss: {
    term: "Kettle loss (trub)",
    means: "Trub is the sludge of hops and protein that stays behind in the kettle, and the wort that stays with it.",
    saidAs: /\btrub\b/i,
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
  topUp: { term: "Top-up water", means: "Water added after the boil, where the kettle is too small for the whole batch." },
  fermenter: {
    term: "Fermenter",
    means: "The vessel with a lid in which yeast turns wort into beer.",
    saidAs: /\bfermenter\b/i,
  },
  rehydrate: {
    term: "Rehydrate",
    means: "To rehydrate yeast is to wet the dry grains in a little warm water before they go in.",
    saidAs: /\brehydrate/i,
  },
  pitch: { term: "Pitch", means: "To pitch is to add the yeast to the cooled wort.", saidAs: /\bpitch/i },
  pitchingRate: {
    term: "Pitching rate",
    means: "How many yeast cells each millilitre of wort gets for each degree Plato: too few start late and taste of it.",
  },
  billionCells: {
    term: "Billion (10⁹) cells",
    means: "Yeast is counted in billions of cells: 1,000,000,000.",
    insteadOf: [/thousand million/i],
  },
  airlock: { term: "Airlock", means: "A valve of water in the lid: gas gets out, nothing gets in.", saidAs: /\bairlock\b/i },
  apparentAttenuation: {
    term: "Apparent attenuation",
    means: "The share of the sugar that the yeast ferments, read from the fall of the gravity: mostly 70 to 80 %.",
    insteadOf: [/\beaten %/i, /should eat/i, /sugar eaten/i],
  },
  finalGravity: { term: "Final gravity", means: "The gravity at which fermentation stops, often 1.008 to 1.016." },
  rack: { term: "Rack", means: "To rack is to siphon beer off its yeast into another vessel.", saidAs: /\brack(s|ed|ing)?\b/i },
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
  conditioning: {
    term: "Conditioning",
    means: "The weeks in which primed bottles stand warm, so that yeast makes the gas and the taste settles.",
  },
  bar: { term: "bar", means: "Pressure as a gauge shows it: above the air outside. 1 bar is about 14.5 psi." },
  suffocates: {
    term: "Suffocate",
    means: "Carbon dioxide is heavier than air and collects in low, closed rooms: whoever breathes it suffocates. Air the room.",
    insteadOf: [/stifles?\b/i, /smothers?\b/i],
  },
} as const satisfies Readonly<Record<string, TradeWord>>;

/** The terms that a sentence speaks of, for whoever meets them there for the first time. */
export const termsIn = (sentence: string): TradeWord[] =>
  Object.values<TradeWord>(tradeWords).filter(({ saidAs }) => saidAs?.test(sentence));

/** What they mean, each as one sentence. */
export const meaningsIn = (sentence: string): string[] =>
  termsIn(sentence).map(({ term, means }) => (means.toLowerCase().includes(term.toLowerCase()) ? means : `${term}: ${means}`));

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
