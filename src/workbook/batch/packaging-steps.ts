import type { UnitSystem } from "../../functions/quantities";

/*
 * What the hands do when beer goes into bottles or a keg: the sheet has room for a few lines, the pane and the guide say the whole.
 * All common practice, in our own words.
 */

const inch: Record<UnitSystem, string> = { us: "an inch", metric: "2 to 3 cm" };
/** In the sheet's units; where there is no sheet, in both. */
const inUnits = (words: Readonly<Record<UnitSystem, string>>, units?: UnitSystem): string =>
  units === undefined ? `${words.metric} (${words.us})` : words[units];

/** Water to boil the priming sugar in (common practice): half a litre, two cups. It is bottled with the beer. */
export const syrupVolume: Readonly<Record<UnitSystem, number>> = { metric: 0.5, us: 0.125 };
const syrupWater: Record<UnitSystem, string> = { us: "two cups", metric: "half a litre" };

/** The hour of the packaging itself, as short as the sheet's section 8 needs it. */
export const packagingInShort = (units: UnitSystem): readonly string[] => [
  "Takes about an hour. Bottles, siphon, caps: clean, then 1 to 2 min in sanitiser, by its label.",
  `Stir the cooled syrup in without splashing; leave ${inUnits(inch, units)} free under each cap.`,
  "Keg: never above the pressure stamped on it; let the pressure off before you open it.",
];

/** How to bottle. What could burst glass is said in the step that it belongs to. */
export const bottlingSteps = (units?: UnitSystem): readonly string[] => [
  "Wait until the readings agree: beer that is still working, with sugar on top, bursts glass. No reading, no bottling.",
  "Look at each bottle against the light; a chipped or cracked one is not filled. Clean bottles, bucket and siphon, then sanitise them and the caps by the sanitiser's label.",
  `Weigh the sugar on a scale, as much as the sheet says: never guess, and never by the spoon. Boil it for 5 minutes in ${inUnits(syrupWater, units)} of water, and let it cool under a lid. Hot syrup sticks to skin and burns.`,
  "The cooled syrup goes into the empty bucket first. Siphon the beer onto it, the hose's end at the bottom, without splashing, and leave the yeast behind. Start the siphon with water or a pump, not with the mouth.",
  "Stir it gently with a sanitised spoon: where sugar is not mixed in, one bottle stays flat and another one bursts.",
  `Fill each bottle and leave ${inUnits(inch, units)} of air in its neck; neither full to the brim nor half empty. Cap it at once.`,
  "Stand them upright, warm and dark, in a closed box or crate, away from people and from heaters: glass under pressure can burst without warning.",
  "After a week chill one, and open it over a sink, its mouth away from faces, in goggles and gloves. A soft hiss is right, and a flat one needs more days. If it gushes, touch none of the warm ones: close the box, keep people away, let it get cold, and only then let the pressure off each, goggles and gloves on.",
];

/** How to fill a keg. */
export const kegSteps = (units?: UnitSystem): readonly string[] => [
  "Read the plate on the keg: what it allows is the most that it is ever given. Let all pressure off before you open it, and never use one with a dented lid or a broken valve.",
  "Clean it, lid, tube and seals too, then sanitise them by the sanitiser's label.",
  `Siphon the beer in without splashing, leave the yeast behind and ${inUnits(inch, units)} of room under the gas tube, and close the lid.`,
  "Stand the gas cylinder upright and fasten it; use a regulator with a relief valve. Set the pressure that the sheet says, then look for leaks with soapy water.",
  "Air the room: carbon dioxide suffocates, unseen, and gathers in cellars and other low or closed rooms. Who feels dizzy there goes out at once.",
  "Keep the keg cold, at the temperature that the sheet goes by, and taste after a week or two.",
];
