/** Events of the tabs came in two steps: adding and deleting early, renaming and moving with ExcelApi 1.17. */
const supports = (version: string): boolean => Office.context.requirements.isSetSupported("ExcelApi", version);

/**
 * Calls `changed` whenever a sheet was added (also by Excel's own Move or Copy), left, deleted, renamed or moved. Where an
 * older Excel has no event for it, the next look at the workbook finds it. One `context.sync()`.
 */
export async function followSheets(context: Excel.RequestContext, changed: () => void): Promise<void> {
  const { worksheets } = context.workbook;
  const tell = (): Promise<void> => {
    changed();
    return Promise.resolve();
  };
  if (!supports("1.7")) return;
  worksheets.onAdded.add(tell);
  worksheets.onDeleted.add(tell);
  // Whoever leaves a sheet may have written on it, and may delete it next.
  worksheets.onDeactivated.add(tell);
  if (supports("1.17")) {
    worksheets.onNameChanged.add(tell);
    worksheets.onMoved.add(tell);
  }
  await context.sync();
}
