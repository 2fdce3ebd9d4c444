import { BatchChoice } from "../sheets/batch-choice";
import { useBatches } from "../sheets/use-batches";
import { ReceiveBatch } from "./receive-batch";
import { SendBatch } from "./send-batch";

/** One batch as a small file: made here, or taken in from somebody else. */
export function BatchFile() {
  const batches = useBatches();
  return (
    <section class="screen" aria-labelledby="batch-file-title">
      <h1 id="batch-file-title">Batch file</h1>
      <p class="lead">One batch as a small text that another Gylebook opens, whatever its units.</p>
      <h2>Make one</h2>
      <BatchChoice batches={batches} />
      {batches.chosen && <SendBatch key={batches.chosen.sheetName} batches={batches} batch={batches.chosen} />}
      <h2>Import</h2>
      <ReceiveBatch batches={batches} />
    </section>
  );
}
