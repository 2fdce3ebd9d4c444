import { sheetsByName, worldOfSheets } from "../../grid/evaluate/sheets-world";
import { groupsOf, Stopped, throughGroups, type LongWork } from "../../grid/write/progress";
import { isBatchSheet, isUnplugged } from "../../batch/read/batch-sheets";
import { sheetsAlike } from "../../batch/read/copied-sheets";
import type { NamedCells } from "../../grid/read/named-cells";
import { loadSheet, namedCells } from "../../grid/read/read-sheets";
import { checkSheet } from "./check-sheet";
import { weights, type Finding } from "./finding";

export interface SheetReport {
  readonly sheet: string;
  readonly isBatch: boolean;
  /** The gravest first. */
  readonly findings: readonly Finding[];
}

export interface CheckReport {
  /** Sheets with findings, in the order of the tabs. */
  readonly sheets: readonly SheetReport[];
  readonly checked: number;
  readonly total: number;
  /** The brewer stopped it: what is there is true, but not all. */
  readonly wasStopped: boolean;
  /** Too large to be read here. */
  readonly passedOver: readonly string[];
  /** Unplugged batches, of which only what any sheet can have wrong is told: their formulas are not ours any more. */
  readonly unplugged: readonly string[];
}

/** So many cells go into one round trip; Excel on the web refuses more than 5 MB (Microsoft, resource limits of Office Add-ins). */
const cellsAtOnce = 40_000;
const largestSheet = 400_000;

/**
 * Looks through every sheet and writes nothing. Sheets are read a few at a time, so that a season of hundreds takes time
 * in proportion; it can be stopped between two groups, and what was found by then is reported.
 *
 * @param today day number of the wall calendar
 */
export async function checkWorkbook(context: Excel.RequestContext, work: LongWork, today: number): Promise<CheckReport> {
  const { worksheets, names } = context.workbook;
  worksheets.load("items/name");
  names.load("items/name,items/formula");
  await context.sync();
  const sized = worksheets.items.map((sheet) => {
    const used = sheet.getUsedRangeOrNullObject();
    used.load("rowCount,columnCount");
    return { sheet, used };
  });
  await context.sync();
  const known = sized.map(({ sheet, used }) => ({ sheet, cells: used.isNullObject ? 0 : used.rowCount * used.columnCount }));
  const passedOver = known.filter(({ cells }) => cells > largestSheet).map(({ sheet }) => sheet.name);
  const read: NamedCells[] = [];
  let wasStopped = false;
  try {
    await throughGroups(
      groupsOf(
        known.filter(({ cells }) => cells <= largestSheet),
        ({ cells }) => cells + 500,
        cellsAtOnce,
      ),
      "sheet",
      work,
      async (group) => {
        const loaded = group.map(({ sheet }) => loadSheet(sheet));
        await context.sync();
        read.push(...loaded.map(namedCells));
      },
    );
  } catch (problem) {
    if (!(problem instanceof Stopped)) throw problem;
    wasStopped = true;
  }
  const workbookNames = new Map(names.items.map(({ name, formula }) => [name.toLowerCase(), String(formula)]));
  return {
    sheets: reports(read, workbookNames, today),
    checked: read.length,
    total: known.length,
    wasStopped,
    passedOver,
    unplugged: read.filter(isUnplugged).map(({ sheetName }) => sheetName),
  };
}

/** What can be said about sheets that were read. */
export function reports(sheets: readonly NamedCells[], workbookNames: ReadonlyMap<string, string>, today: number): SheetReport[] {
  const byName = sheetsByName(sheets);
  const twins = twinBatches(sheets);
  return sheets.flatMap((sheet): SheetReport[] => {
    const findings = [...(twins.get(sheet) ?? []), ...checkSheet(sheet, worldOfSheets(byName, workbookNames, sheet.sheetName), today)];
    const sorted = findings.sort((one, other) => weights.indexOf(one.weight) - weights.indexOf(other.weight));
    return sorted.length === 0 ? [] : [{ sheet: sheet.sheetName, isBatch: isBatchSheet(sheet), findings: sorted }];
  });
}

/** A sheet that was copied by hand keeps the mark of its original, and the two are taken for one batch. */
function twinBatches(sheets: readonly NamedCells[]): Map<NamedCells, Finding[]> {
  const batches = sheets.filter(isBatchSheet);
  return new Map(
    batches.flatMap((sheet): [NamedCells, Finding[]][] => {
      const others = sheetsAlike(batches, sheet)
        .map((name) => `“${name}”`)
        .join(", ");
      return others === ""
        ? []
        : [
            [
              sheet,
              [
                {
                  sheet: sheet.sheetName,
                  address: sheet.range("batch_id").split(":")[0] ?? "",
                  weight: "look",
                  words: `Has the same mark as ${others}, so they count as one batch when files are shared, and neither can draw on the stores. Say which is the copy under Season, or type another mark into this cell of the copy, such as ${sheet.text("batch_id")}-2.`,
                },
              ],
            ],
          ];
    }),
  );
}
