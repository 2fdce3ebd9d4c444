import { readBatchSheet } from "./batch-sheets";

/** Where in the job a batch is, in the words of the pane's places. */
export type Stage = "Plan" | "Brew" | "Ferment" | "Package";

/**
 * Where the sheet in front is in its life, from its dates; "Plan" for any other sheet and for one that is to be brewed some other day.
 *
 * @param today day number of today on the brewer's calendar
 */
export async function batchStage(context: Excel.RequestContext, today: number): Promise<Stage> {
  const sheet = await readBatchSheet(context);
  if (!sheet) return "Plan";
  const [brewed, packaged] = [sheet.knownNumber("brewed_on"), sheet.knownNumber("packaged_on")];
  if (packaged !== undefined && packaged <= today) return "Package";
  if (brewed === undefined || brewed > today) return "Plan";
  return Math.floor(brewed) === today && sheet.knownNumber("og_reading") === undefined ? "Brew" : "Ferment";
}
