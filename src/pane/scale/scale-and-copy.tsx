import { useState } from "preact/hooks";
import type { UnitSystem } from "../../functions/quantities";
import type { Kit } from "../../workbook/batch/contents";
import { insertBatch } from "../../workbook/insert-batch";
import type { BatchInWorkbook, WorkbookAtOneMoment } from "../../workbook/read/batches-in-workbook";
import { converted } from "../../workbook/scale/convert-units";
import { scaledCopy } from "../../workbook/scale/scaled-copy";
import { ChoiceField } from "../new-batch/choice-field";
import { volumeWord } from "../new-batch/form-values";
import { TextField } from "../new-batch/text-field";
import { BatchChoice } from "../sheets/batch-choice";
import { inWorkbook, type Done } from "../sheets/in-workbook";
import { Outcome } from "../sheets/outcome";
import { today, typedDay, typedNumber } from "../sheets/typed";
import { useBatches } from "../sheets/use-batches";
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
      {chosen && <CopyForm key={chosen.sheetName} original={chosen} kits={workbook ? kitsFor(workbook, chosen) : []} refresh={batches.refresh} />}
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
  const ofBatches = batches.filter((other) => other.sheetName !== chosen.sheetName).map(({ sheetName, contents: { kitName, units, kit } }) => ({ label: `As on ${sheetName}${kitName ? ` (${kitName})` : ""}`, name: kitName, units, kit }));
  return [...named, ...ofBatches];
}

function CopyForm({ original, kits, refresh }: { readonly original: BatchInWorkbook; readonly kits: readonly OfferedKit[]; readonly refresh: () => Promise<unknown> }) {
  const { contents } = original;
  const [name, setName] = useState(`${contents.batchName || original.sheetName}, again`.slice(0, 31));
  const [brewedOn, setBrewedOn] = useState(today);
  const [units, setUnits] = useState<UnitSystem>(contents.units);
  const [volume, setVolume] = useState(String(Number(contents.volume.toFixed(2))));
  const [kitLabel, setKitLabel] = useState("");
  const [busy, setBusy] = useState(false);
  const [outcome, setOutcome] = useState<Done<string>>();

  const amount = typedNumber(volume);
  const day = typedDay(brewedOn);
  const volumeProblem = amount !== undefined && amount >= 0.1 && amount <= 10000 ? undefined : `How much beer? From 0.1 to 10000 ${volumeWord[units]}.`;
  const scaled = volumeProblem === undefined && amount !== undefined ? scaledCopy(contents, { name, brewedOn: day ?? contents.brewedOn, volume: amount, units, kit: kits.find(({ label }) => label === kitLabel) }) : undefined;

  const write = async (sheetName: string) => {
    if (!scaled || day === undefined) return;
    setName(sheetName);
    setBusy(true);
    setOutcome(await inWorkbook("The copy was not written, and the workbook is as it was.", async (context) => {
      await insertBatch(context, { ...scaled, sheetName, batchName: sheetName });
      return sheetName;
    }));
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
      <TextField id="copy-name" label="Name of the copy" value={name} onInput={setName} />
      <TextField id="copy-day" type="date" label="To be brewed on" value={brewedOn} problem={day === undefined ? "Which day? A date such as 2026-09-05." : undefined} onInput={setBrewedOn} />
      <ChoiceField
        legend="Units"
        name="copy-units"
        value={units}
        choices={[
          ["metric", "Metric: L, kg, °C"],
          ["us", "US: gal, lb, °F"],
        ]}
        onChange={(chosen) => {
          setUnits(chosen);
          if (amount !== undefined && chosen !== units) setVolume(String(Number(converted("volume", amount, units, chosen).toFixed(2))));
        }}
      />
      <TextField id="copy-volume" inputMode="decimal" label={`Beer in the fermenter, ${volumeWord[units]}`} value={volume} problem={volumeProblem} onInput={setVolume} />
      {kits.length > 0 && (
        <div class="field">
          <label for="copy-kit">Kit</label>
          <select id="copy-kit" value={kitLabel} onChange={(event) => setKitLabel(event.currentTarget.value)} aria-describedby="copy-kit-help">
            <option value="">As on this batch</option>
            {kits.map(({ label }) => (
              <option key={label} value={label}>
                {label}
              </option>
            ))}
          </select>
          <p id="copy-kit-help" class="hint">Kettle, losses, boil-off, altitude, burner and bottles. Mash and boil times stay with the recipe.</p>
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
