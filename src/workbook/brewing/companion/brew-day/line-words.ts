/* Why the lines are done that the clock adds to the steps of the sheet, and what goes wrong otherwise. Common practice, in our own words. */

export const boilBeginsWhy =
  "Boiling kills what lives in the wort, drives off unwanted smells and turns the hops bitter. The clock starts with the first real bubbles; sooner, and the hops boil too short.";

export const flameOutWhy =
  "While the wort stays hot the late hops go on turning bitter and lose their scent, so the chilling, or the stand that is planned, follows at once.";

export const standWhy =
  "Hot but not boiling, hops give up their oils and only some bitterness: the cooler the stand, the less. Water off when its temperature is reached, lid on to keep the scent in.";

/** A hop that boils long gives bitterness, one that goes in late gives taste and scent. */
export function hopWhy(minutesLeft: number | string): string {
  if (minutesLeft === "first wort")
    return "Hops that steep in the first hot wort are said to taste softer. No source settles it; their bitterness counts as that of a whole boil.";
  if (minutesLeft === "stand") return "In wort that stands hot the scent stays, and some bitterness still comes.";
  if (typeof minutesLeft === "string") return "";
  if (minutesLeft === 0) return "At flame-out the scent stays; in the hot wort the hops still turn a little bitter until it is cold.";
  if (minutesLeft >= 30) return "The longer hops boil, the more bitterness they give. Too late, and the beer turns out sweet.";
  if (minutesLeft >= 10) return "A short boil gives taste and some bitterness. Too early, and the taste leaves with the steam.";
  return "A few minutes keep the scent of the hops. Too early, and it leaves with the steam.";
}
