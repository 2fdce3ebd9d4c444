import { useState } from "preact/hooks";
import type { UnitSystem } from "../../functions/quantities";
import type { Kit } from "../../workbook/batch/contents";
import { insertBatch } from "../../workbook/batch/insert-batch";
import type { BatchInWorkbook, WorkbookAtOneMoment } from "../../workbook/sheets/batches-in-workbook";
import { scaledCopy } from "../../workbook/batch/scale/scaled-copy";
import { BatchChoice } from "../sheets/batch-choice";
import { inWorkbook, type Done } from "../sheets/in-workbook";
import { Outcome } from "../sheets/outcome";
import { useBatches } from "../sheets/use-batches";
import { CopyFields, useCopy } from "./copy-fields";
import { ScaledFigures } from "./scaled-figures";

/** A batch once more, for another volume, kit or unit system. */
export function ScaleAndCopy() {
  const batches = useBatches();
  const { workbook, chosen } = batches;
  return (
    <section class="screen" aria-labelledby="scale-title">
      <h1 id="scale-title">Scale and copy</h1>
      <p class="lead">The same beer again, for another volume, kit or unit system. The batch you choose is not changed.</p>
      <BatchChoice batches={batches} />
      {chosen && (
        <CopyForm key={chosen.sheetName} original={chosen} kits={workbook ? kitsFor(workbook, chosen) : []} refresh={batches.refresh} />
      )}
    </section>
  );
}

interface OfferedKit {
  readonly label: string;
  readonly name: string;
  readonly units: UnitSystem;
  readonly kit: Kit;
}

/** The kits of the kit sheet, and what the other batches stand on. */
function kitsFor({ kits, batches }: WorkbookAtOneMoment, chosen: BatchInWorkbook): OfferedKit[] {
  const named = kits.map(({ name, units, kit }) => ({ label: `${name}, from the kit sheet`, name, units, kit }));
  const ofBatches = batches
    .filter((other) => other.sheetName !== chosen.sheetName)
    .map(({ sheetName, contents: { kitName, units, kit } }) => ({
      label: `As on ${sheetName}${kitName ? ` (${kitName})` : ""}`,
      name: kitName,
      units,
      kit,
    }));
  return [...named, ...ofBatches];
}

function CopyForm({
  original,
  kits,
  refresh,
}: {
  readonly original: BatchInWorkbook;
  readonly kits: readonly OfferedKit[];
  readonly refresh: () => Promise<unknown>;
}) {
  const { contents } = original;
  const copy = useCopy(original, "again");
  const [kitLabel, setKitLabel] = useState("");
  const [busy, setBusy] = useState(false);
  const [outcome, setOutcome] = useState<Done<string>>();

  const { name, amount, day, units } = copy;
  const scaled =
    amount === undefined
      ? undefined
      : scaledCopy(contents, {
          name,
          brewedOn: day ?? contents.brewedOn,
          volume: amount,
          units,
          kit: kits.find(({ label }) => label === kitLabel),
        });

  const write = async (sheetName: string) => {
    if (!scaled || day === undefined) return;
    copy.setName(sheetName);
    setBusy(true);
    setOutcome(
      await inWorkbook("The copy was not written, and the workbook is as it was.", async (context) => {
        await insertBatch(context, { ...scaled, sheetName, batchName: sheetName });
        return sheetName;
      }),
    );
    setBusy(false);
    await refresh();
  };

  return (
    <form
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void write(name.trim());
      }}
    >
      <CopyFields id="copy" copy={copy} nameLabel="Name of the copy" unitsLegend="Units" volumeLabel="Beer in the fermenter" />
      {kits.length > 0 && (
        <div class="field">
          <label for="copy-kit">Kit</label>
          <select
            id="copy-kit"
            value={kitLabel}
            onChange={(event) => setKitLabel(event.currentTarget.value)}
            aria-describedby="copy-kit-help"
          >
            <option value="">As on this batch</option>
            {kits.map(({ label }) => (
              <option key={label} value={label}>
                {label}
              </option>
            ))}
          </select>
          <p id="copy-kit-help" class="hint">
            Kettle, losses, boil-off, altitude, burner and bottles. Mash and boil times stay with the recipe.
          </p>
        </div>
      )}
      {scaled && <ScaledFigures original={contents} scaled={scaled} />}
      <button type="submit" class="main-action" disabled={busy || !scaled || day === undefined}>
        {busy ? "Writing…" : "Write the copy on a sheet of its own"}
      </button>
      <Outcome outcome={outcome} onFreeName={(free) => void write(free)}>
        {(sheetName) => <p>“{sheetName}” is in the workbook: the plan only, without readings, tasting and notes.</p>}
      </Outcome>
    </form>
  );
}
