import type { BatchSheet } from "../../workbook/batch/read/batch-sheets";
import type { ComponentChildren } from "preact";
import { unpluggedWords } from "../../workbook/batch/read/unplugged-batches";
import { CopiedBatch } from "./copied-batch";
import { useBatchSheet } from "./use-batch-sheet";
import "./companion.css";

export interface Batch {
  readonly sheet: BatchSheet;
  /** After writing: reads the sheet again. */
  readonly reload: () => Promise<void>;
}

/** A screen that works on the batch sheet in front, and says so where there is none. */
export function BatchScreen({ title, children }: { readonly title: string; readonly children: (batch: Batch) => ComponentChildren }) {
  const { front, reload } = useBatchSheet();
  return (
    <section class="screen" aria-labelledby="screen-title">
      <h1 id="screen-title">{title}</h1>
      {front.kind === "reading" && <p role="status">Reading the sheet…</p>}
      {front.kind === "none" && <p class="lead">Bring a batch sheet to the front, or make one under Plan.</p>}
      {front.kind === "newer" && <p class="bad">“{front.sheetName}” was made by a newer Gylebook: update the add-in to work on it.</p>}
      {front.kind === "unplugged" && <p class="lead">{unpluggedWords(front.sheetName, "work on it")}</p>}
      {front.kind === "failed" && (
        <>
          <p class="bad" role="alert">
            The sheet could not be read. {front.message}
          </p>
          <button type="button" onClick={() => void reload()}>
            Try again
          </button>
        </>
      )}
      {front.kind === "batch" && (
        <>
          <p class="lead">{front.sheet.text("batch_name") || front.sheet.sheetName}</p>
          {front.isBehind && (
            <p class="hint">Its sheet “{front.sheet.sheetName}” is not the one in front; what you do here goes there all the same.</p>
          )}
          <CopiedBatch sheet={front.sheet} reload={reload} />
          {children({ sheet: front.sheet, reload })}
        </>
      )}
    </section>
  );
}
