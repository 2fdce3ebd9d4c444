import { BrewingError } from "../../../../core/brewing-error";
import { enrichedVolumeL, waterAndExtract } from "../../../../core/wort/enrich";
import { quantity, type UnitSystem } from "../../../../functions/quantities";
import { wortEnrich } from "../../../../functions/wort/enrich";
import { wortMix } from "../../../../functions/wort/mix";
import { wortReduce } from "../../../../functions/wort/reduce";
import { wortThin } from "../../../../functions/wort/thin";
import { ask } from "../ask";
import { shown } from "../words";
import { gravitySlack, volumeSlack, type Missed, type Wort } from "./plan-and-measured";

/** One way out, with its amounts and what the beer becomes by it. */
export interface Correction {
  readonly title: string;
  /** What to do, with how much. */
  readonly what: string;
  readonly caution: string;
  readonly result: Wort;
  readonly ibu: number | undefined;
}

const dryExtractPercent = 90;

/** The two or three things that can be done, the last one always to leave it. Empty when the wort is on plan. */
export function corrections(missed: Missed): Correction[] {
  const { measured, planned, place } = missed;
  const gravity = measured.gravity - planned.gravity;
  const short = planned.volume - measured.volume > volumeSlack * planned.volume;
  const strong = gravity > gravitySlack;
  const weak = gravity < -gravitySlack;
  const much = measured.volume - planned.volume > volumeSlack * planned.volume;
  if (!strong && !weak && !short && !much) return [];
  const ways = [
    strong && dilute(missed),
    strong && short && fillUp(missed),
    weak && place === "kettle" && boilOn(missed),
    weak && enrich(missed, "dry malt extract", dryExtractPercent, place === "kettle" ? inKettleCaution : inFermenterCaution),
    weak &&
      place === "fermenter" &&
      enrich(missed, "sugar", 100, `Sugar makes the beer thinner and drier: a little of it only. ${inFermenterCaution}`),
    !strong && !weak && short && (fillUpAndEnrich(missed) ?? waterAlone(missed)),
  ];
  return [...ways.filter((way) => way !== false && way !== undefined), leave(missed)];
}

const water = "Boiled and cooled water only: from here on nothing else kills what is in it.";

/** How water goes in: into a kettle that still boils, any clean water does. */
const waterCaution = ({ place }: Missed): string => (place === "kettle" ? "Pour it in slowly: hot wort spits." : water);

function dilute(missed: Missed): Correction | undefined {
  const { measured, planned, units } = missed;
  const { value: added } = ask(wortThin, measured.volume, measured.gravity, planned.gravity, units);
  if (added === undefined) return undefined;
  const volume = measured.volume + added;
  const room = volume > 1.1 * planned.volume ? " Is there room for it, and for the foam?" : "";
  return {
    title: "Add water",
    what: `Stir in ${shown(added, "volume", units)} of water.${room}`,
    caution: waterCaution(missed),
    result: { volume, gravity: planned.gravity },
    ibu: missed.ibuAt(volume),
  };
}

/** Skipped where it is what the gravity asks for anyway. */
function fillUp(missed: Missed): Correction | undefined {
  const way = waterAlone(missed);
  return way && Math.abs(way.result.gravity - missed.planned.gravity) > gravitySlack ? way : undefined;
}

/** Water up to the planned volume only. */
function waterAlone(missed: Missed): Correction | undefined {
  const { measured, planned, units } = missed;
  const added = planned.volume - measured.volume;
  const { value: gravity } = ask(wortMix, [[measured.volume], [added]], [[measured.gravity], [1]]);
  if (gravity === undefined) return undefined;
  return {
    title: "Water up to the planned volume",
    what: `Stir in ${shown(added, "volume", units)} of water.`,
    caution: waterCaution(missed),
    result: { volume: planned.volume, gravity },
    ibu: missed.ibuAt(planned.volume),
  };
}

function boilOn(missed: Missed): Correction | undefined {
  const { measured, planned, units, boilOff } = missed;
  const { value: away } = ask(wortReduce, measured.volume, measured.gravity, planned.gravity, units);
  if (away === undefined || !(boilOff > 0)) return undefined;
  const minutes = Math.round((60 * away) / boilOff);
  const volume = measured.volume - away;
  return {
    title: "Boil on",
    what: `Boil for ${minutes} min more, until ${shown(away, "volume", units)} is gone.`,
    caution: "Stay with it, lid off. Late hops lose their scent meanwhile.",
    result: { volume, gravity: planned.gravity },
    ibu: missed.ibuAt(volume, minutes),
  };
}

/** Extract or sugar for the fermenter: dissolved off the flame in water enough, and only then boiled. */
const syrupWords = "Off the flame, stir until it is all dissolved; then boil it gently for ten minutes, cool it covered, and stir it in.";
const inKettleCaution = "Flame off, stirred until it is gone: on the bottom it scorches. Hot syrup sticks to skin and burns.";
const inFermenterCaution =
  "Stay with it: it foams over, and hot syrup sticks and burns. Cool it first; only sanitised things touch the wort.";

/** In the kettle as it is; for the fermenter as a syrup of equal masses, whose water thins the wort as its sugar enriches it. */
function enrich(missed: Missed, name: string, yieldPercent: number, caution: string): Correction | undefined {
  const { measured, planned, units, place } = missed;
  const parts = place === "kettle" ? 1 : 2;
  const { value: added } = ask(wortEnrich, measured.volume, measured.gravity, planned.gravity, yieldPercent / parts, units);
  if (added === undefined) return undefined;
  const volume = grownBy(added, missed);
  const mass = shown(added / parts, "mass", units, 2);
  const how = place === "kettle" ? `Stir in ${mass} of ${name}.` : `Take ${mass} of ${name} and ${mass} of hot water. ${syrupWords}`;
  return { title: `Add ${name}`, what: how, caution, result: { volume, gravity: planned.gravity }, ibu: missed.ibuAt(volume) };
}

/** Wort was lost, the rest is about as strong as planned: water for the volume, extract for the gravity. */
function fillUpAndEnrich(missed: Missed): Correction | undefined {
  const { measured, planned, units } = missed;
  const needed = toFillUp(measured, planned, units);
  if (!needed) return undefined;
  return {
    title: "Water and extract",
    what:
      missed.place === "kettle"
        ? `Stir in ${shown(needed.mass, "mass", units, 2)} of dry malt extract and ${shown(needed.water, "volume", units)} of water.`
        : `Take ${shown(needed.mass, "mass", units, 2)} of dry malt extract and ${shown(needed.water, "volume", units)} of hot water. ${syrupWords}`,
    caution: missed.place === "kettle" ? inKettleCaution : inFermenterCaution,
    result: { volume: planned.volume, gravity: planned.gravity },
    ibu: missed.ibuAt(planned.volume),
  };
}

/** What the wort comes to with an addition in it that brings it to the planned gravity. */
function grownBy(mass: number, { measured, planned, units }: Missed): number {
  const [volume, kilograms] = [quantity("volume"), quantity("mass")];
  return volume.fromCore(
    enrichedVolumeL(volume.toCore(measured.volume, units), measured.gravity, kilograms.toCore(mass, units), planned.gravity),
    units,
  );
}

/** Water and dry extract from the wort that there is to the one that was planned; undefined where one of them would have to come out. */
function toFillUp(measured: Wort, planned: Wort, units: UnitSystem): { readonly water: number; readonly mass: number } | undefined {
  const [volume, kilograms] = [quantity("volume"), quantity("mass")];
  try {
    const { waterL, massKg } = waterAndExtract(
      volume.toCore(measured.volume, units),
      measured.gravity,
      volume.toCore(planned.volume, units),
      planned.gravity,
      dryExtractPercent,
    );
    return { water: volume.fromCore(waterL, units), mass: kilograms.fromCore(massKg, units) };
  } catch (problem) {
    if (problem instanceof BrewingError) return undefined;
    throw problem;
  }
}

function leave(missed: Missed): Correction {
  const { measured, planned } = missed;
  const gravity = measured.gravity - planned.gravity;
  const strength = gravity > gravitySlack ? "a stronger beer" : gravity < -gravitySlack ? "a lighter beer" : "the strength as planned";
  const amount =
    measured.volume < planned.volume * (1 - volumeSlack)
      ? "less of it"
      : measured.volume > planned.volume * (1 + volumeSlack)
        ? "more of it"
        : "as much as planned";
  return {
    title: "Leave it",
    what: `It becomes ${strength}, and ${amount}.`,
    caution: "",
    result: measured,
    ibu: missed.ibuAt(measured.volume),
  };
}
