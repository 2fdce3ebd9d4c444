import { counted } from "../../grid/words/counted";
import { planVersion } from "../../batch/describe/plan-version";
import { withSecondLook } from "../../grid/read/second-look";
import { bringAlong } from "./bring-along";
import { readOutlook, type ReadSheet, type SheetOutlook } from "./outlook";
import { newChart } from "./new-chart";
import { listed } from "../../grid/words/listed";
import { refreshed } from "./refresh";
import { isNew, type Work } from "./work";

export interface MigratedSheet {
  readonly sheetName: string;
  readonly from: number;
  readonly to: number;
  /** What was added, with its cell: "“Planned on the kit:” (L2)", and how many cells follow today's plan now. */
  readonly added: readonly string[];
  /** What stays as it was, and why, in sentences. */
  readonly stays: readonly string[];
}

export interface MigrationReport {
  readonly migrated: readonly MigratedSheet[];
  /** Batch sheets that were left as they are, and why; those of today's plan are not among them. */
  readonly left: readonly SheetOutlook[];
}

/**
 * Brings batch sheets that an older Gylebook made to today's plan: cells that it lacks, and today's words, formulas and
 * cautions in the place of its own plan's. What the brewer typed, a formula of the brewer's own too, is not
 * touched. All sheets or none. Six `context.sync()` at most, whatever the number of sheets.
 *
 * @param only the sheets to bring along; all older ones if left out
 * @throws FunctionsUnknown, with every sheet as it was; otherwise as `writeSurely`
 */
export async function migrateSheets(context: Excel.RequestContext, only?: readonly string[]): Promise<MigrationReport> {
  return withSecondLook(() => lookAndWrite(context, only));
}

async function lookAndWrite(context: Excel.RequestContext, only?: readonly string[]): Promise<MigrationReport> {
  const sheets = (await readOutlook(context)).filter(({ outlook }) => only?.includes(outlook.sheetName) ?? true);
  const work = sheets.filter(({ outlook }) => outlook.state === "older").map(planned);
  const left = sheets.map(({ outlook }) => outlook).filter(({ state }) => state === "newer" || state === "refused");
  if (work.length === 0) return { migrated: [], left };
  await bringAlong(context, work);
  return { migrated: work.map(reported), left };
}

const planned = (sheet: ReadSheet): Work => ({
  ...sheet,
  fresh: refreshed(sheet.cells, sheet.outlook.version),
  chart: newChart(sheet.cells, sheet.chartNames),
});

function reported({ outlook, fresh, chart }: Work): MigratedSheet {
  const changed = fresh.cells.filter(({ was }) => was !== "").length;
  return {
    sheetName: outlook.sheetName,
    from: outlook.version,
    to: planVersion,
    added: [
      ...fresh.names.map(({ label, cell }) => `“${label}” (${cell})`),
      ...(changed > 0 ? [`today's words and formulas in ${counted(changed, "cell")}`] : []),
      ...(isNew(chart) ? [`today's chart in the place of the old one, with its figures (${chart.area})`] : []),
    ],
    stays: [
      ...(fresh.stepsStay === undefined
        ? []
        : [`The steps of the day stay, since ${fresh.stepsStay}: compare them with those of a new batch.`]),
      ...(fresh.kept.length > 0
        ? [`What you wrote over formulas or words of ours stays: ${listed(fresh.kept)}. It does not follow today's rules.`]
        : []),
      ...(chart && !isNew(chart) ? [`Its old chart stays, since ${chart.stays}.`] : []),
    ],
  };
}
