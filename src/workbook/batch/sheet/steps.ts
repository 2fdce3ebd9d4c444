import type { UnitSystem } from "../../../functions/quantities";
import { monthsShort } from "../../grid/words/day-words";
import type { Method, StepLine } from "../contents";
import type { BlockKey } from "../fields/blocks";
import { restNames } from "../fields/blocks/mash";
import { unitWords, type UnitWords } from "../unit-words";

/*
 * The steps of a brew day: what, in which part of the day, how long, what to beware of, and why. All common practice, in our
 * own words. At most 15, so that with the clock's own lines and a usual bill of hops they stay within the printed rows.
 */

/** "US gal" → "gal": lines of the clock are short. */
const short = (unit: string): string => unit.replace("US ", "");

const steepLimit: Record<UnitSystem, string> = { us: "170 °F", metric: "77 °C" };
const spargeAt: Record<UnitSystem, string> = { us: "168 °F", metric: "76 °C" };
const cool: Record<UnitSystem, string> = { us: "80 °F", metric: "27 °C" };
/** Hot enough to kill what would spoil wort that never boils (common practice). */
const heated: Record<UnitSystem, string> = { us: "176 °F", metric: "80 °C" };

/** What a block of the sheet asks for is said at its time, in the line that is there: lines and their order are the same with every block. */
type Has = (key: BlockKey) => boolean;

/** A day and its month, without a pattern that regional settings would change. */
export const dayAndMonth = (day: string): string =>
  `DAY(${day})&" "&CHOOSE(MONTH(${day}),${monthsShort.map((month) => `"${month}"`).join(",")})`;

const cleanFirst = (has: Has): StepLine => ({
  what: has("starter")
    ? `=IF(N(starter_by)=0,"Clean all; lay out kettle, scale, starter","Clean all; starter there? Made by "&${dayAndMonth("starter_by")})`
    : "Clean all; lay out kettle, bag, scale, yeast",
  part: "before",
  minutes: 15,
  caution: "Cleaner burns skin and eyes: gloves, and never with bleach or acid.",
  why: `Sanitiser cannot get through dirt, so whatever will touch cold wort must be clean before it is sanitised. To hand as well: thermometer, hydrometer with its jar, fermenter with lid and airlock, sanitiser, spoon, gloves. ${has("starter") ? "A starter grows for a day and settles for another; out of the cold now, it warms up." : "Yeast that comes out of the cold now has time to warm up."}`,
});

/** All that is dissolved rather than steeped or mashed, as the malt table says. */
const dissolvedMass = "(SUM(malt_mass)-N(grain_mass))";
const isDissolved = "SUM(malt_mass)>N(grain_mass)+0.001";
const hasSugar = 'COUNTIF(malt_handling,"sugar")>0';
/** How much goes into the kettle with the flame off. */
const dissolve = (mass: string, has: Has): string => {
  const amount = `FIXED(${dissolvedMass},2,TRUE)&" ${mass}`;
  return has("beforeBoil")
    ? `"Flame off; "&${amount} in; note volume, gravity"`
    : `"Flame off; stir in "&IF(${hasSugar},"extract, sugar: "&${amount}",${amount} of extract")`;
};

/** Packs to pitch, where they are known: a starter goes in whole, and parts may have yeasts of their own. */
const packs = (has: Has, counted: string, otherwise: string): string =>
  has("starter") || has("partsOfWort")
    ? otherwise
    : `=IF(IF(ISNUMBER(packs_to_pitch),packs_to_pitch>0,FALSE),"${counted.replace("#", '"&FIXED(packs_to_pitch,0,TRUE)&IF(packs_to_pitch=1," pack"," packs")&"')}","${otherwise}")`;

/** Salts or acid are to go in. */
const isSalted = "SUM(INDEX(salt_bill,0,2))+IF(ISNUMBER(mash_acid_amount),mash_acid_amount,0)>0";
const isSaltedExtract = "SUM(INDEX(salt_bill,0,2))>0";

/** All rests of a mash in a line: "Rests 52° 20, 63° 40, 72° 20 min". */
const restsShort =
  '="Rests "&TEXT(soak_temperature,"0")&"° "&TEXT(soak_minutes,"0")' +
  restNames.map((name) => `&IF(N(${name}_rest)>0,", "&TEXT(${name}_rest,"0")&"° "&TEXT(N(${name}_minutes),"0"),"")`).join("") +
  '&" min"';
/** With the time that it takes to pour and stir; to draw, boil and return; or to heat (common practice: a degree Celsius a minute). */
const restMinutes =
  "=N(soak_minutes)" +
  restNames
    .map((name, index) => {
      const from = index === 0 ? "soak_temperature" : `${name}_from`;
      return `+IF(N(${name}_rest)>0,N(${name}_minutes)+IF(${name}_by="decoction",30,IF(${name}_by="heating",ROUND(MAX(0,${name}_rest-${from})/IF(units="us",1.8,1),0),5)),0)`;
    })
    .join("");

/** The day's last line looks ahead: from the day of pitching the dry hops are counted. */
const cleanUpAndLater =
  '="Clean up while wet"&IF(AND(COUNTIF(hop_minutes,"dry")>0,N(dry_after)>0),"; dry hops: day "&dry_after&IF(N(dry_for)>0," to "&(dry_after+dry_for),""),"")';

const heating = "Gas: outdoors or moving air. Electric: earthed, RCD socket, dry hands.";
const chlorine =
  "Chlorine gives beer a taste of plasters: let tap water stand overnight, or treat it with sulphite (Campden) by its label; chloramine goes only with that.";

/** Our steps for a sheet with these blocks. */
export function ourSteps(method: Method, units: UnitSystem, blocks: readonly BlockKey[]): readonly StepLine[] {
  const has: Has = (key) => blocks.includes(key);
  return (method === "extract" ? extractSteps : allGrainSteps)(units, unitWords(units), has);
}

function extractSteps(units: UnitSystem, words: UnitWords, has: Has): readonly StepLine[] {
  return [
    cleanFirst(has),
    {
      what: `=IF(N(water_collect)=0,"Collect chlorine-free water in the kettle","Collect "&FIXED(water_collect,2,TRUE)&" ${short(words.volume)} of chlorine-free water"${has("waterTreatment") ? `&IF(${isSaltedExtract},"; salts","")` : ""})`,
      part: "before",
      minutes: 10,
      caution: "A full kettle is heavy: put it on the burner first, then fill it.",
      why: `Part of it boils away and part stays in grain and kettle, so more goes in than comes out. ${chlorine}`,
    },
    {
      what: `="Warm it to "&TEXT(soak_temperature,"0")&" ${words.temperature}"&IF(N(grain_mass)>0,"; grain bag in: "&FIXED(grain_mass,2,TRUE)&" ${words.mass}",", then the grain bag in")`,
      part: "before",
      minutes: "=N(warm_minutes)",
      caution: heating,
      why: "Warm water draws colour, taste and some sugar out of the crushed grain. A heater stands where nothing drips on plug and cable.",
    },
    {
      what: `="Steep; out at "&TEXT(soak_minutes,"0")&" min or ${steepLimit[units]}"`,
      part: "before",
      minutes: "=N(soak_minutes)",
      caution: `Not hotter than ${steepLimit[units]}: whichever comes first ends it.`,
      why: "Too hot or too long pulls harsh, tea-like taste out of the husks.",
    },
    {
      what: "Lift the bag, let it drain over the kettle",
      part: "before",
      minutes: 5,
      caution: "The bag scalds: tongs or a lid under it, and no squeezing by hand.",
      why: "What drips out is good wort; pressing it out adds husk taste and burnt fingers.",
    },
    {
      what: `=IF(${isDissolved},${dissolve(words.mass, has)},"${has("beforeBoil") ? "Flame off; extract in; note volume, gravity" : "Flame off; stir extract in until it is gone"}")`,
      part: "before",
      minutes: 10,
      caution: "Flame off: on the bottom it scorches. Hot syrup sticks to skin and burns.",
      why: "Stir until nothing is left on the bottom: extract sinks, and over a flame it burns to the kettle and tastes of it. All the water is in the kettle for it to dissolve in.",
    },
    ...fromTheBoilOn(units, words, has),
  ];
}

/** The same day when the sugar is mashed from malt. */
function allGrainSteps(units: UnitSystem, words: UnitWords, has: Has): readonly StepLine[] {
  const volume = short(words.volume);
  return [
    cleanFirst(has),
    {
      what: `=IF(N(mash_water)>0,${has("waterTreatment") ? `IF(${isSalted},"Salts, acid in; heat ","Heat chlorine-free ")&FIXED(mash_water,2,TRUE)&" ${volume} to "` : `"Heat "&FIXED(mash_water,2,TRUE)&" ${volume} chlorine-free water to "`}&TEXT(strike_temperature,"0")&" ${words.temperature}",IF(N(water_collect)>0,"Collect "&FIXED(water_collect,2,TRUE)&" ${volume} of chlorine-free water","Heat the water for the mash, chlorine-free"))`,
      part: "before",
      minutes: "=N(warm_minutes)",
      caution: has("waterTreatment") ? "Acid into water, never the reverse: goggles. Earthed plug, dry hands; air." : heating,
      why: `The grain is cold: the water must be hotter than the mash is to be. ${has("waterTreatment") ? "Half of the acid first: stir, mash, measure a cooled sample, then the rest. Gas burner: outdoors or moving air. " : ""}${chlorine}`,
    },
    {
      what: `=IF(N(grain_mass)>0,"Stir in "&FIXED(grain_mass,2,TRUE)&" ${words.mass} grain","Stir the grain in")&"; it settles at "&TEXT(soak_temperature,"0")&" ${words.temperature}"`,
      part: "before",
      minutes: 10,
      caution: "Hot mash sticks and scalds: long spoon, slow pouring.",
      why: "Dry lumps keep their starch, so every grain must get wet.",
    },
    {
      what: has("mashRunOff")
        ? restsShort
        : `="Mash for "&TEXT(soak_minutes,"0")&" min"&IF(N(sparge_water)>0,"; heat "&FIXED(sparge_water,2,TRUE)&" ${volume} to ${spargeAt[units]}",", covered")`,
      part: "before",
      minutes: has("mashRunOff") ? restMinutes : "=N(soak_minutes)",
      caution: has("mashRunOff")
        ? "Boiling water, boiling mash: gloves; pour slowly. Amounts: in its section."
        : "Keep it covered. Any water to rinse with heats in a second pot: it scalds.",
      why: "At this warmth the malt's own enzymes turn starch into sugar; too hot and they die. Stir, then measure in the middle, and correct in small steps. The kettle will hold the wort, so water for the rinsing needs a pot of its own.",
    },
    {
      what: has("mashRunOff")
        ? `=IF(N(sparge_water)>0,"Run off, measure; rinse: "&FIXED(sparge_water,2,TRUE)&" ${volume}, ${spargeAt[units]}","Run off, or lift the bag; measure")`
        : `=IF(N(sparge_water)>0,"Run off; rinse with "&FIXED(sparge_water,2,TRUE)&" ${volume} at ${spargeAt[units]}","Run off, or lift the bag; no rinsing")`,
      part: "before",
      minutes: 45,
      caution: `Not above ${steepLimit[units]}; in portions, no fuller than the mash. Two to lift.`,
      why: "Rinsing wins the sugar that clings to the grain; too hot or too long wins tannin too. Hot wort by the bucketful scalds whoever stumbles with it.",
    },
    {
      what: `=IF(${isDissolved},${dissolve(words.mass, has)},"Note volume and gravity before the boil")`,
      part: "before",
      minutes: 5,
      caution: "Hot wort scalds. Extract, sugar only with the flame off: they scorch.",
      why: "Extract and sugar sink and burn; without them, two figures now tell what the grain gave while it can still be corrected.",
    },
    ...fromTheBoilOn(units, words, has),
  ];
}

/** What both ways of brewing share. */
function fromTheBoilOn(units: UnitSystem, words: UnitWords, has: Has): readonly StepLine[] {
  const volume = short(words.volume);
  return [
    {
      what: `=IF(N(boil_minutes)>0,"Flame on; bring it to the boil, and stay","Flame on; to ${heated[units]}, hold 10 min: no boil")`,
      part: "before",
      minutes: "=N(boil_up_minutes)+IF(N(boil_minutes)>0,0,10)",
      caution: "Heated wort can foam over in seconds. Lid off, spoon ready, flame down.",
      why: "Protein makes a skin of foam that climbs over the rim, most of all just before it boils.",
    },
    {
      what: `="Soak hoses"&IF(IF(ISNUMBER(sanitiser_dose),sanitiser_dose>0,FALSE),": "&FIXED(sanitiser_dose,${units === "us" ? 2 : 0},TRUE)&" ${short(words.doseVolume)} sanitiser in "&FIXED(sanitiser_volume,2,TRUE)&" ${volume}",", lid in sanitiser by its label")`,
      part: "boil",
      minutes: 35,
      caution: "Dose and contact time by the label. Never with bleach or other cleaners.",
      why: "From flame-out on nothing but sanitiser keeps other microbes out: whatever touches the wort then, spoon and thermometer too, goes through it first.",
    },
    {
      what: "Chiller in: drained, water off; any finings",
      part: "boil",
      minutes: 18,
      caution: "Both ends open, outlet fixed in a drain away from people: it can scald.",
      why: "Fifteen to twenty minutes in the boil, or all of a shorter one, sanitise the coil. Water in it would flash to steam, and running water would stop the boil. Finings for the kettle clear the beer; it does without them, too.",
    },
    {
      what: `="Chill to "&TEXT(pitch_temperature,"0")&" ${words.temperature}: water on slowly; stir, lid on"`,
      part: "after",
      minutes: "=MAX(0,N(chill_minutes)-N(stand_after))",
      caution: "Steam or scalding water comes out first: hands and faces clear of it.",
      why: `Below ${cool[units]} the yeast is safe; the sooner, the less time for others to move in. Stir with the sanitised spoon.`,
    },
    {
      what: '=IF(N(top_up)>0,"Into the fermenter; top up and stir it hard","Into the fermenter, splashing")',
      part: "after",
      minutes: 15,
      caution: "Two to lift. Cold wort only: glass cracks with hot. Sanitised things only.",
      why: "Splashing gives the yeast the air it needs; top-up water that is not mixed in gives a false reading.",
    },
    {
      what: "Draw a sample; note gravity and temperature",
      part: "after",
      minutes: 5,
      caution: "The sample is not poured back.",
      why: "Without the original gravity nobody can tell the alcohol, nor whether the yeast has finished.",
    },
    {
      what: has("starter")
        ? "Pour the beer off the starter; stir up"
        : packs(has, "Open the yeast, #; rehydrate by label", "Open the yeast; rehydrate it if so labelled"),
      part: "after",
      minutes: 10,
      caution: has("starter")
        ? "Its rim and the cloth: sanitised. What smells sour or sharp is not pitched."
        : "Packet, scissors, cup: sanitised. Liquid packs can spurt; open slowly.",
      why: "Dry yeast is sprinkled on, or first wetted in boiled and cooled water, as its label says. Yeast about as warm as the wort starts sooner.",
    },
    {
      what: has("kegLine")
        ? '=IF(ISNUMBER(spund_planned),"Pitch; airlock on. Close it only at "&FIXED(spund_planned,3,TRUE),"Pitch the yeast; lid on, airlock filled")'
        : packs(has, "Pitch #; lid on, airlock filled", "Pitch the yeast; lid on, airlock filled"),
      part: "after",
      minutes: 5,
      caution: has("kegLine")
        ? "Never seal it before; then only with a relief valve. CO2 fills closed rooms."
        : "Never seal it: gas must get out, and it fills low closed rooms.",
      why: "Enough healthy yeast at the right temperature starts within a day or two and leaves no room for others.",
    },
    {
      what: has("lateHops") ? cleanUpAndLater : "Clean up while it is still wet",
      part: "after",
      minutes: 30,
      caution: "Hot kettle, hot burner: let them cool, plug out. Cleaner off skin.",
      why: "Dried-on wort is tomorrow's infection.",
    },
  ];
}
