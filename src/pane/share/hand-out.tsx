import { useState } from "preact/hooks";
import { batchToShare } from "../../workbook/batch-file/batch-to-share";
import { batchFileName, writeBatchFile } from "../../workbook/batch-file/write-batch-file";
import { handOut } from "../../workbook/handout/hand-out";
import { insertBatch } from "../../workbook/insert-batch";
import type { BatchInWorkbook } from "../../workbook/read/batches-in-workbook";
import { ChoiceField } from "../new-batch/choice-field";
import { CopyFields, useCopy } from "../scale/copy-fields";
import { ScaledFigures } from "../scale/scaled-figures";
import { BatchChoice } from "../sheets/batch-choice";
import { inWorkbook, type Done } from "../sheets/in-workbook";
import { Outcome } from "../sheets/outcome";
import { useBatches, type Batches } from "../sheets/use-batches";
import { CopyableFile } from "./copyable-file";
import { PricesField } from "./prices-field";

/** A batch as a blank that others brew from. */
export function HandOut() {
  const batches = useBatches();
  return (
    <section class="screen" aria-labelledby="hand-out-title">
      <h1 id="hand-out-title">Hand-out</h1>
      <p class="lead">A blank for pupils or club mates: plan, steps, whys and cautions stay; readings, tasting and private words go.</p>
      <BatchChoice batches={batches} />
      {batches.chosen && <HandOutForm key={batches.chosen.sheetName} batches={batches} original={batches.chosen} />}
    </section>
  );
}

type Form = "sheet" | "file";
type Made = { readonly kind: "sheet"; readonly sheetName: string } | { readonly kind: "file"; readonly fileName: string; readonly text: string };

function HandOutForm({ batches, original }: { readonly batches: Batches; readonly original: BatchInWorkbook }) {
  const { contents } = original;
  const copy = useCopy(original, "blank");
  const [prices, setPrices] = useState(false);
  const [form, setForm] = useState<Form>("sheet");
  const [busy, setBusy] = useState(false);
  const [outcome, setOutcome] = useState<Done<Made>>();
  const { name, amount, day, units } = copy;
  const blank = amount !== undefined && day !== undefined ? handOut(batchToShare(original), { name, brewedOn: day, prices, volume: amount, units }) : undefined;

  const make = async (sheetName: string) => {
    if (!blank) return;
    copy.setName(sheetName);
    setBusy(true);
    const named = { ...blank, sheetName, batchName: sheetName };
    setOutcome(
      form === "file"
        ? { kind: "done", result: { kind: "file", fileName: batchFileName(named), text: writeBatchFile(named, { prices }) } }
        : await inWorkbook("The blank was not written, and the workbook is as it was.", async (context): Promise<Made> => {
            await insertBatch(context, named);
            return { kind: "sheet", sheetName };
          }),
    );
    setBusy(false);
    if (form === "sheet") await batches.refresh();
  };

  return (
    <form
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void make(name.trim());
      }}
    >
      <CopyFields id="blank" copy={copy} nameLabel="Name of the blank" unitsLegend="Their units" volumeLabel="Their volume" />
      <PricesField prices={prices} onChange={setPrices} />
      <ChoiceField
        legend="As"
        name="blank-form"
        value={form}
        choices={[
          ["sheet", "A sheet in this workbook"],
          ["file", "A batch file, for members with Gylebook"],
        ]}
        onChange={(chosen) => {
          setForm(chosen);
          setOutcome(undefined);
        }}
      />
      {blank && <ScaledFigures original={contents} scaled={blank} />}
      <button type="submit" class="main-action" disabled={busy || !blank}>
        {busy ? "Writing…" : form === "sheet" ? "Write the blank on a sheet of its own" : "Make the file"}
      </button>
      <Outcome outcome={outcome} onFreeName={(free) => void make(free)}>
        {(made) => (made.kind === "sheet" ? <p>“{made.sheetName}” is in the workbook. For members without the add-in, make an unplugged copy of it.</p> : <CopyableFile fileName={made.fileName} text={made.text} />)}
      </Outcome>
    </form>
  );
}
