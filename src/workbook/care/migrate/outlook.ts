import { planVersion } from "../../batch/describe/plan-version";
import { isAnyBatch, isUnplugged, planMark, type BatchSheet } from "../../batch/read/batch-sheets";
import { loadSheet, namedCells } from "../../grid/read/read-sheets";
import { batchContents } from "../../batch/read/batch-contents";
import { MissingName, type NamedCells } from "../../grid/read/named-cells";
import { namesSince } from "./new-names";

/** How one batch sheet stands to the plan that this Gylebook makes. */
export interface SheetOutlook {
  readonly sheetName: string;
  readonly version: number;
  readonly state: "current" | "older" | "newer" | "refused";
  /** For "newer" and "refused": why it is left as it is, in words for the brewer. */
  readonly reason?: string;
}

export interface ReadSheet {
  readonly cells: BatchSheet;
  readonly outlook: SheetOutlook;
  readonly chartNames: readonly string[];
}

/** Reads every batch sheet of the workbook, unplugged ones too: two `context.sync()`, nothing is changed. */
export async function readOutlook(context: Excel.RequestContext): Promise<ReadSheet[]> {
  const sheets = context.workbook.worksheets;
  sheets.load("items/name");
  await context.sync();
  const loaded = sheets.items.map((sheet) => ({
    ...loadSheet(sheet),
    protection: sheet.protection.load("protected"),
    charts: sheet.charts.load("items/name"),
  }));
  await context.sync();
  return loaded
    .map((one) => ({ cells: namedCells(one), closed: one.protection.protected, chartNames: one.charts.items.map(({ name }) => name) }))
    .filter(({ cells }) => isAnyBatch(cells))
    .map(({ cells, closed, chartNames }) => ({ cells, chartNames, outlook: outlookOf(cells, closed) }));
}

function outlookOf(cells: NamedCells, closed: boolean): SheetOutlook {
  const { sheetName } = cells;
  const mark = planMark(cells);
  const version = Number(mark);
  const refused = (reason: string): SheetOutlook => ({ sheetName, version, state: "refused", reason });
  if (!Number.isInteger(version) || version < 1) return refused(`the cell with the number of its plan holds "${String(mark)}"`);
  if (version === planVersion) return { sheetName, version, state: "current" };
  if (version > planVersion) {
    return {
      sheetName,
      version,
      state: "newer",
      reason: `a newer Gylebook made it (plan ${version}; this one knows plans up to ${planVersion}): update Gylebook`,
    };
  }
  if (isUnplugged(cells)) return refused("it is unplugged: plug it back in first (Share, Unplug)");
  if (closed) return refused("the sheet is protected: unprotect it first");
  const gone = goneName(cells);
  if (gone !== undefined) return refused(`a cell that it needs was deleted: ${gone}`);
  const taken = namesSince(version).find((name) => cells.has(name));
  if (taken) return refused(`it has a name "${taken}" of its own, which the newer plan needs: rename that one first`);
  return { sheetName, version, state: "older" };
}

/** A name without which the sheet cannot be read. */
function goneName(cells: BatchSheet): string | undefined {
  try {
    batchContents(cells);
    return undefined;
  } catch (problem) {
    if (problem instanceof MissingName) return problem.missing;
    throw problem;
  }
}
