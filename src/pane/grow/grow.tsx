import { useState } from "preact/hooks";
import { blocksFor, type BlockKey } from "../../workbook/batch/fields/blocks";
import { methodOf } from "../../workbook/batch/read/batch-contents";
import { blocksOnSheet } from "../../workbook/batch/read/blocks-on-sheet";
import type { AddedBlocks } from "../../workbook/care/grow/add-blocks";
import { listed } from "../../workbook/grid/words/listed";
import { BatchScreen, type Batch } from "../companion/batch-screen";
import type { Done } from "../sheets/in-workbook";
import { BlocksField } from "./blocks-field";
import { growSheet } from "./grow-work";

export const Grow = () => (
  <BatchScreen title="More on the sheet">{(batch) => <GrowForm key={batch.sheet.sheetName} {...batch} />}</BatchScreen>
);

/** What the sheet in front does not have yet, and a button that adds it below everything else. */
function GrowForm({ sheet, reload }: Batch) {
  const there = blocksOnSheet(sheet);
  const offered = blocksFor(methodOf(sheet)).filter((key) => !there.includes(key));
  const [chosen, setChosen] = useState<readonly BlockKey[]>([]);
  const [busy, setBusy] = useState(false);
  const [outcome, setOutcome] = useState<Done<AddedBlocks>>();
  const add = async () => {
    setBusy(true);
    setOutcome(undefined);
    const done = await growSheet(sheet.sheetName, chosen);
    await reload();
    if (done.kind === "done") setChosen([]);
    setOutcome(done);
    setBusy(false);
  };
  return (
    <>
      {offered.length > 0 ? (
        <>
          <BlocksField legend="Add to this sheet" offered={offered} chosen={chosen} onChange={setChosen} />
          <p class="hint">It goes below everything on the sheet, on a page of its own. Nothing moves, and what you typed stays.</p>
          <button type="button" class="main-action" disabled={busy || chosen.length === 0} onClick={() => void add()}>
            {busy ? "Writing…" : "Add it"}
          </button>
        </>
      ) : (
        <p>This sheet has everything already.</p>
      )}
      <div aria-live="polite" class="outcome">
        {outcome && outcome.kind !== "done" && <p class="bad">{outcome.message}</p>}
        {outcome?.kind === "done" && (
          <p class="good">
            Added: {listed(outcome.result.added)}.
            {outcome.result.kept.length > 0 && ` Your own formulas stay, and do not follow it: ${listed(outcome.result.kept)}.`}
          </p>
        )}
      </div>
    </>
  );
}
