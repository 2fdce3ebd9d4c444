import { useEffect, useState } from "preact/hooks";
import { copiesInWorkbook } from "../../workbook/brewing/companion/own-mark";
import { batchIdOf, type BatchSheet } from "../../workbook/batch/read/batch-sheets";
import { CopiedSheets } from "../sheets/copied-sheets";

/** Says so where the batch on the screen has a twin: looked for once for each sheet that comes forward. */
export function CopiedBatch({ sheet, reload }: { readonly sheet: BatchSheet; readonly reload: () => Promise<void> }) {
  const [groups, setGroups] = useState<readonly (readonly string[])[]>([]);
  const { sheetName } = sheet;
  const mark = batchIdOf(sheet);
  useEffect(() => {
    let isShown = true;
    // A look that fails says nothing: the screen itself tells that the sheet cannot be read.
    Excel.run({ delayForCellEdit: true }, copiesInWorkbook).then(
      (found) => isShown && setGroups(found),
      () => undefined,
    );
    return () => {
      isShown = false;
    };
  }, [sheetName, mark]);
  return <CopiedSheets groups={groups.filter((names) => names.includes(sheetName))} onGiven={() => void reload()} />;
}
