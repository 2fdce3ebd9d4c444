import { useEffect, useState } from "preact/hooks";
import { batchesInWorkbook, type BatchInWorkbook, type WorkbookAtOneMoment } from "../../workbook/sheets/batches-in-workbook";
import { inWorkbook } from "./in-workbook";

export interface Batches {
  readonly workbook: WorkbookAtOneMoment | undefined;
  readonly problem: string | undefined;
  readonly chosen: BatchInWorkbook | undefined;
  choose(sheetName: string): void;
  /** Reads the workbook anew: the brewer may have typed since. */
  refresh(): Promise<WorkbookAtOneMoment | undefined>;
}

/** The batches of the workbook for a screen that works on one of them; the sheet in front is chosen first. */
export function useBatches(): Batches {
  const [workbook, setWorkbook] = useState<WorkbookAtOneMoment>();
  const [problem, setProblem] = useState<string>();
  const [sheetName, setSheetName] = useState<string>();
  const refresh = async (): Promise<WorkbookAtOneMoment | undefined> => {
    const read = await inWorkbook("The workbook could not be read.", batchesInWorkbook);
    if (read.kind !== "done") {
      setProblem(read.message);
      return undefined;
    }
    setProblem(undefined);
    setWorkbook(read.result);
    // The first look decides, by the sheet in front; what a screen writes and brings to the front does not change the choice.
    const { batches, activeSheet } = read.result;
    setSheetName((before) => before ?? (batches.find((batch) => batch.sheetName === activeSheet) ?? batches[0])?.sheetName);
    return read.result;
  };
  useEffect(() => {
    void refresh();
  }, []);
  const named = (name: string | undefined) => workbook?.batches.find((batch) => batch.sheetName === name);
  return { workbook, problem, chosen: named(sheetName) ?? workbook?.batches[0], choose: setSheetName, refresh };
}
