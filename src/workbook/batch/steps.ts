import type { UnitSystem } from "../../functions/quantities";
import type { StepLine } from "./contents";
import type { UnitWords } from "./unit-words";

/* The steps of a brew day: what, in which part of the day, how long, what to beware of, and why. All common practice, in our own words. */

/** "US gal" → "gal": lines of the clock are short. */
const short = (unit: string): string => unit.replace("US ", "");

const scalding: Record<UnitSystem, string> = { us: "180 °F", metric: "82 °C" };
const steepLimit: Record<UnitSystem, string> = { us: "170 °F", metric: "77 °C" };
const cool: Record<UnitSystem, string> = { us: "80 °F", metric: "27 °C" };

export function extractSteps(units: UnitSystem, words: UnitWords): readonly StepLine[] {
  return [
    { what: "Clean everything; lay out kettle, bag, scale", part: "before", minutes: 15, caution: "Cleaner burns skin and eyes: gloves, and never with bleach or acid.", why: "Sanitiser cannot get through dirt, so whatever will touch cold wort must be clean before it is sanitised." },
    { what: `="Collect "&TEXT(water_collect,"0.0")&" ${words.volume} of water in the kettle"`, part: "before", minutes: 10, caution: "A full kettle is heavy: put it on the burner first, then fill it.", why: "Part of it boils away and part stays in grain and kettle, so more goes in than comes out." },
    { what: `="Warm it to "&TEXT(soak_temperature,"0")&" ${words.temperature}, then the grain bag in"`, part: "before", minutes: "=N(warm_minutes)", caution: "Gas: outdoors or with air moving. Never leave the flame alone.", why: "Warm water draws colour, taste and some sugar out of the crushed grain." },
    { what: `="Steep; out at "&TEXT(soak_minutes,"0")&" min or ${steepLimit[units]}"`, part: "before", minutes: "=N(soak_minutes)", caution: `Not hotter than ${steepLimit[units]}: whichever comes first ends it.`, why: "Too hot or too long pulls harsh, tea-like taste out of the husks." },
    { what: "Lift the bag, let it drain over the kettle", part: "before", minutes: 5, caution: "The bag scalds: tongs or a lid under it, and no squeezing by hand.", why: "What drips out is good wort; pressing it out adds husk taste and burnt fingers." },
    { what: "Flame off; stir the extract in until it is gone", part: "before", minutes: 10, caution: "Flame really off: syrup on the bottom scorches. Hot splashes stick.", why: "Extract sinks. Over a flame it burns to the kettle and tastes of it." },
    ...fromTheBoilOn(units, words),
  ];
}

/** The same day when the sugar is mashed from malt. */
export function allGrainSteps(units: UnitSystem, words: UnitWords): readonly StepLine[] {
  return [
    { what: "Clean everything; lay out kettle, bag, scale", part: "before", minutes: 15, caution: "Cleaner burns skin and eyes: gloves, and never with bleach or acid.", why: "Sanitiser cannot get through dirt, so whatever will touch cold wort must be clean before it is sanitised." },
    { what: `="Heat "&TEXT(mash_water,"0.0")&" ${short(words.volume)} of water to "&TEXT(strike_temperature,"0")&" ${words.temperature}"`, part: "before", minutes: "=N(warm_minutes)", caution: "Gas: outdoors or with air moving. Never leave the flame alone.", why: "The grain is cold: the water must be hotter than the mash is to be." },
    { what: `="Stir the grain in; it settles at "&TEXT(soak_temperature,"0")&" ${words.temperature}"`, part: "before", minutes: 10, caution: "Hot mash sticks and scalds: long spoon, slow pouring.", why: "Dry lumps keep their starch, so every grain must get wet." },
    { what: '="Mash for "&TEXT(soak_minutes,"0")&" min, covered"', part: "before", minutes: "=N(soak_minutes)", caution: "Measure in the middle, stir before; correct in small steps.", why: "At this warmth the malt's own enzymes turn starch into sugar; too hot and they die." },
    { what: `="Run off; rinse with "&TEXT(sparge_water,"0.0")&" ${short(words.volume)} at "&TEXT(${units === "us" ? 168 : 76},"0")&" ${words.temperature}"`, part: "before", minutes: 45, caution: `Not above ${units === "us" ? "170 °F" : "77 °C"}. A full vessel of hot wort is not to be lifted alone.`, why: "Rinsing wins the sugar that clings to the grain; too hot or too long wins tannin too." },
    { what: '=IF(SUM(malt_mass)>N(grain_mass)+0.001,"Flame off; stir extract or sugar in until gone","Note volume and gravity before the boil")', part: "before", minutes: 5, caution: "Flame off while extract goes in: it scorches. Hot wort sticks and scalds.", why: "Extract and sugar sink and burn; without them, two figures now tell what the grain gave while it can still be mended." },
    ...fromTheBoilOn(units, words),
  ];
}

/** What both ways of brewing share. */
function fromTheBoilOn(units: UnitSystem, words: UnitWords): readonly StepLine[] {
  return [
    { what: "Flame on; bring it to the boil, and stay", part: "before", minutes: "=N(boil_up_minutes)", caution: "It foams up just before it boils. Lid off, spoon ready, flame down.", why: "Protein makes a skin of foam that can climb over the rim within seconds." },
    { what: `="Soak hoses, lid: "&TEXT(sanitiser_dose,"0.0")&" ${short(words.doseVolume)} sanitiser in "&TEXT(sanitiser_volume,"0.0")&" ${short(words.volume)}"`, part: "boil", minutes: 35, caution: "Follow the label for dose and contact: one minute at the very least.", why: `Whatever touches wort below ${scalding[units]} must be sanitised, since from there on nothing else keeps other microbes out.` },
    { what: "Chiller into the boiling wort, hoses on", part: "boil", minutes: 18, caution: "Water left in the coil becomes steam: open end away from everybody.", why: "A quarter of an hour in the boil sanitises the coil." },
    { what: `="Chill to "&TEXT(pitch_temperature,"0")&" ${words.temperature}, lid on, stirring now and then"`, part: "after", minutes: "=N(chill_minutes)", caution: "The first water out is near boiling. Keep hands and hose ends clear.", why: `Below ${cool[units]} the yeast is safe; the sooner, the less time for others to move in.` },
    { what: '=IF(N(top_up)>0,"Into the fermenter; top up and stir it hard","Into the fermenter, splashing")', part: "after", minutes: 15, caution: "Lift with a helper. From here on only sanitised things touch it.", why: "Splashing gives the yeast the air it needs; top-up water that is not mixed in gives a false reading." },
    { what: "Draw a sample; note gravity and temperature", part: "after", minutes: 5, caution: "The sample is not poured back.", why: "Without the original gravity nobody can tell the alcohol, nor whether the yeast has finished." },
    { what: "Pitch the yeast; lid on, airlock filled", part: "after", minutes: 5, caution: "Never seal it: gas must get out, and it fills low closed rooms.", why: "Enough healthy yeast at the right temperature starts within a day or two and leaves no room for others." },
    { what: "Clean up while it is still wet", part: "after", minutes: 30, caution: "Hot kettle, hot burner: let them cool. Cleaner off skin.", why: "Dried-on wort is tomorrow's infection." },
  ];
}
