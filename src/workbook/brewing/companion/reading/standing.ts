import type { BatchSheet } from "../../../batch/read/batch-sheets";
import { ownEntry } from "../../../../functions/own-entry";
import { momentShown } from "../../../grid/words/day-words";
import { notTellingYet } from "../../fermentation/under-way";

/** Where the fermentation stands, in our words: what the sheet's verdict means, what to do, and when to read again. */
export interface Standing {
  readonly means: string;
  readonly next: string;
  /** "" when nothing more is to be read. */
  readonly readAgain: string;
}

const meanings: Readonly<Record<string, string>> = {
  "": "No reading of the fermenting beer yet.",
  "not begun": "Not begun: the gravity has not begun to fall.",
  working: "The yeast is at work.",
  nearly: "Falling slowly: the end is near.",
  steady: "Steady: the gravity no longer falls.",
  stalled: "It has stopped well above where it should end.",
  rising: "A reading stands above an earlier one, which beer cannot do.",
};

export function standing(sheet: BatchSheet): Standing {
  const verdict = sheet.text("verdict");
  const next = sheet.number("next_reading");
  const restsOn = sheet.knownText("verdict_rests");
  const notYet = notTellingYet({
    verdict,
    gravity: sheet.knownNumber("fg"),
    originalGravity: sheet.knownNumber("og"),
    lastReading: sheet.knownNumber("last_reading"),
    countFrom: sheet.knownNumber("count_from"),
  });
  return {
    means: verdict === "steady" && restsOn !== "" ? `Steady, by ${restsOn}.` : (notYet ?? ownEntry(meanings, verdict) ?? verdict),
    next: sheet.text("next_step"),
    readAgain: next === "" ? "" : `Read again on ${momentShown(next)}.`,
  };
}
