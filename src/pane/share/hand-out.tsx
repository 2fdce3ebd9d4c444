import { useState } from "preact/hooks";
import { batchToShare } from "../../workbook/sheets/batch-to-share";
import { batchFileName, writeBatchFile } from "../../workbook/exchange/batch-file/write-batch-file";
import type { BatchContents } from "../../workbook/batch/contents";
import { handOut } from "../../workbook/sheets/handout/hand-out";
import { insertBatch } from "../../workbook/batch/insert-batch";
import type { BatchInWorkbook } from "../../workbook/sheets/batches-in-workbook";
import type { UnpluggedSheet } from "../../workbook/exchange/unplug";
import { ChoiceField } from "../fields/choice-field";
import { CopyFields, useCopy } from "../scale/copy-fields";
import { ScaledFigures } from "../scale/scaled-figures";
import { BatchChoice } from "../sheets/batch-choice";
import { inWorkbook, type Done } from "../sheets/in-workbook";
import { Outcome } from "../sheets/outcome";
import { useBatches, type Batches } from "../sheets/use-batches";
import { newWorkbookWords } from "../unplug/new-workbook-words";
import { CopyableFile } from "./copyable-file";
import { PricesField } from "./prices-field";

/** A batch as a blank that others brew from. */
export function HandOut() {
  const batches = useBatches();
  return (
    <section class="screen" aria-labelledby="hand-out-title">
      <h1 id="hand-out-title">Hand-out</h1>
      <p class="lead">
        A blank for adults learning to brew, or for club members. It keeps the plan, steps, reasons and cautions, and leaves out readings,
        tasting and private words.
      </p>
      <BatchChoice batches={batches} />
      {batches.chosen && <HandOutForm key={batches.chosen.sheetName} batches={batches} original={batches.chosen} />}
    </section>
  );
}

type Form = "sheet" | "unplugged" | "workbook" | "file";
type Made =
  | { readonly kind: "sheet"; readonly sheetName: string }
  | { readonly kind: "file"; readonly fileName: string; readonly text: string }
  | { readonly kind: "unplugged" | "workbook"; readonly copy: UnpluggedSheet };

const buttons: Record<Form, string> = {
  sheet: "Write the blank on a sheet of its own",
  unplugged: "Write the unplugged blank on a sheet of its own",
  workbook: "Make a workbook of the unplugged blank",
  file: "Make the file",
};

function HandOutForm({ batches, original }: { readonly batches: Batches; readonly original: BatchInWorkbook }) {
  const { contents } = original;
  const copy = useCopy(original, "blank");
  const [prices, setPrices] = useState(false);
  const [form, setForm] = useState<Form>("sheet");
  const [busy, setBusy] = useState(false);
  const [outcome, setOutcome] = useState<Done<Made>>();
  const { name, amount, day, units } = copy;
  const blank =
    amount !== undefined && day !== undefined
      ? handOut(batchToShare(original), { name, brewedOn: day, prices, volume: amount, units })
      : undefined;

  const make = async (sheetName: string) => {
    if (!blank) return;
    copy.setName(sheetName);
    setBusy(true);
    const named = { ...blank, sheetName, batchName: sheetName };
    setOutcome(
      form === "file"
        ? { kind: "done", result: { kind: "file", fileName: batchFileName(named), text: writeBatchFile(named, { prices }) } }
        : await inWorkbook("The blank was not written, and the workbook is as it was.", async (context): Promise<Made> => {
            if (form !== "sheet") return { kind: form, copy: await unplugged(context, named, form) };
            await insertBatch(context, named);
            return { kind: "sheet", sheetName };
          }),
    );
    setBusy(false);
    if (form !== "file") await batches.refresh();
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
          ["unplugged", "A sheet in this workbook, for members without Gylebook"],
          ["workbook", "A new workbook, for members without Gylebook"],
        ]}
        onChange={(chosen) => {
          setForm(chosen);
          setOutcome(undefined);
        }}
      />
      {blank && <ScaledFigures original={contents} scaled={blank} />}
      <button type="submit" class="main-action" disabled={busy || !blank}>
        {busy ? "Writing…" : buttons[form]}
      </button>
      <Outcome outcome={outcome} onFreeName={(free) => void make(free)}>
        {(made) => <Result made={made} />}
      </Outcome>
    </form>
  );
}

/** Unplugging is fetched when it is asked for: no other form of the blank needs it. */
async function unplugged(context: Excel.RequestContext, blank: BatchContents, form: "unplugged" | "workbook"): Promise<UnpluggedSheet> {
  if (form === "unplugged")
    return (
      await import(/* webpackChunkName: "pane-unplugged-hand-out" */ "../../workbook/sheets/handout/unplugged-hand-out")
    ).insertUnpluggedHandOut(context, blank);
  const { openUnpluggedHandOut } = await import(
    /* webpackChunkName: "pane-unplugged-workbook" */ "../../workbook/sheets/handout/unplugged-workbook"
  );
  return openUnpluggedHandOut(context, blank, (base64) => Excel.createWorkbook(base64));
}

function Result({ made }: { readonly made: Made }) {
  if (made.kind === "file") return <CopyableFile fileName={made.fileName} text={made.text} />;
  if (made.kind === "sheet") return <p>“{made.sheetName}” is in the workbook.</p>;
  return (
    <>
      <p>
        {made.kind === "workbook" ? newWorkbookWords(`“${made.copy.copyName}”`) : `“${made.copy.copyName}” is in the workbook, unplugged.`}
      </p>
      <p>
        {made.copy.plain} formulas calculate on without Gylebook; {made.copy.values.length} are values now and will not follow changes. A
        member who has Gylebook can plug the blank in.
      </p>
    </>
  );
}
