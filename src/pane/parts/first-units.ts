import type { UnitSystem } from "../../functions/quantities";

const memory = "gylebook-units";

/** Where beer is measured in gallons and degrees Fahrenheit: the United States, and the two that share their customary units. */
const usRegions: readonly string[] = ["US", "LR", "MM"];

/** The units of a country, from a browser's language such as "en-US"; metric where it names no country. */
export const unitsOfLanguage = (language: string): UnitSystem => {
  try {
    return usRegions.includes(new Intl.Locale(language).region ?? "") ? "us" : "metric";
  } catch {
    return "metric";
  }
};

/** What a form starts with: the units chosen last, else those of the browser's language. */
export function firstUnits(): UnitSystem {
  try {
    const kept = localStorage.getItem(memory);
    if (kept === "us" || kept === "metric") return kept;
  } catch {
    // Storage may be closed to a pane inside another site.
  }
  return unitsOfLanguage(navigator.language);
}

/** Somebody has written a sheet in these units: the next form starts with them. */
export function rememberUnits(units: UnitSystem): void {
  try {
    localStorage.setItem(memory, units);
  } catch {
    // As said above.
  }
}
