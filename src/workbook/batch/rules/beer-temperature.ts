import type { UnitSystem } from "../../../functions/quantities";
import type { UnitWords } from "../unit-words";
import { rule, silent, type CheckLine } from "./rule";
import { anyWords, unusable } from "./words";

/** Pitching warmer than this harms ale yeast or what it makes (common practice). */
const warmestPitch: Readonly<Record<UnitSystem, number>> = { us: 80, metric: 27 };
/** Colder than any beer that still ferments, in °F: such figures are °C (our judgement). */
const coldBeerF = 40;

/** Rules about one temperature, whatever the sheet said before. */
export const ofTheWarmth: ReadonlySet<string> = new Set(
  ["pitch-too-warm", "too-warm", "too-cold"].map((rule) => `beer-temperature.${rule}`),
);

export function beerTemperatureLine(units: UnitSystem, words: UnitWords): CheckLine {
  const asked = units === "us" ? `IF(MIN(beer_temperatures)<${coldBeerF}," Is that °C?","")` : '""';
  return {
    id: "beer-temperature",
    label: "Temperature of the beer",
    weight: "look",
    steps: [
      ...unusable("pitch_temperature", "Pitch at", "allowed"),
      ...unusable("ferment_from", "Ferments from", "allowed"),
      ...unusable("ferment_to", "Ferments to", "allowed"),
      rule("pitch-missing", 'pitch_temperature=""', "Pitch at: no temperature yet, so the clock does not know how far to chill."),
      rule(
        "pitch-too-warm",
        `pitch_temperature>${warmestPitch[units]}`,
        `"Pitching at "&pitch_temperature&" ${words.temperature} harms the yeast:"`,
        `chill below ${warmestPitch[units]} ${words.temperature}.`,
      ),
      rule(
        "range-exchanged",
        "AND(N(ferment_from)>0,N(ferment_to)>0,N(ferment_from)>N(ferment_to))",
        "The yeast's lowest temperature is above its highest: are the two exchanged?",
      ),
      rule("text", anyWords("beer_temperatures"), "A temperature of the beer is a text, not a number, so it counts for nothing."),
      silent("none", "COUNT(beer_temperatures)=0"),
      rule(
        "too-warm",
        "AND(N(ferment_to)>0,MAX(beer_temperatures)>ferment_to+2)",
        `"At "&TEXT(MAX(beer_temperatures),"0")&" ${words.temperature} it is too warm for this yeast and will taste of it."${units === "metric" ? '&IF(MAX(beer_temperatures)>45," Is that °F?","")' : ""}`,
      ),
      rule(
        "too-cold",
        "AND(N(ferment_from)>0,MIN(beer_temperatures)<ferment_from-2)",
        `"At "&TEXT(MIN(beer_temperatures),"0")&" ${words.temperature} it is so cold that the yeast may stop."&${asked}`,
      ),
    ],
  };
}
