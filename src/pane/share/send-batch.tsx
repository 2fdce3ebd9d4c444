import { useState } from "preact/hooks";
import { batchToShare } from "../../workbook/sheets/batch-to-share";
import { batchFileName, writeBatchFile } from "../../workbook/exchange/batch-file/write-batch-file";
import type { BatchInWorkbook } from "../../workbook/sheets/batches-in-workbook";
import type { Batches } from "../sheets/use-batches";
import { CopyableFile } from "./copyable-file";
import { PricesField } from "./prices-field";

export function SendBatch({ batches, batch }: { readonly batches: Batches; readonly batch: BatchInWorkbook }) {
  const [prices, setPrices] = useState(false);
  const [made, setMade] = useState<{ readonly fileName: string; readonly text: string }>();
  const make = async () => {
    // The brewer may have typed since the screen was opened.
    const fresh = (await batches.refresh())?.batches.find(({ sheetName }) => sheetName === batch.sheetName);
    if (fresh) setMade({ fileName: batchFileName(fresh.contents), text: writeBatchFile(batchToShare(fresh), { prices }) });
  };
  return (
    <>
      <PricesField
        prices={prices}
        onChange={(wanted) => {
          setPrices(wanted);
          setMade(undefined);
        }}
      />
      <button type="button" class="main-action" onClick={() => void make()}>
        Make the batch file
      </button>
      {made && <CopyableFile {...made} />}
    </>
  );
}
