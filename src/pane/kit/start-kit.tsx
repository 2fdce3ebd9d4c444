import { useState } from "preact/hooks";
import type { UnitSystem } from "../../functions/quantities";
import { ChoiceField } from "../new-batch/choice-field";
import { TextField } from "../new-batch/text-field";
import type { Outcome } from "../new-batch/write-batch";
import { writeKit } from "./kit-work";

/** Asks for a kit's name and the units, and writes the kit sheet. */
export function StartKit({ onWritten }: { readonly onWritten: () => void }) {
  const [units, setUnits] = useState<UnitSystem>("metric");
  const [name, setName] = useState("My kit");
  const [busy, setBusy] = useState(false);
  const [outcome, setOutcome] = useState<Outcome>();
  const write = async (sheetName: string) => {
    setBusy(true);
    const result = await writeKit(sheetName, units, name.trim() || "My kit");
    setBusy(false);
    setOutcome(result);
    if (result.kind === "written") onWritten();
  };
  return (
    <>
      <TextField id="kit-name" label="Name of the kit" value={name} hint="Batches are counted to a kit by its name; more kits can be added on the sheet." onInput={setName} />
      <ChoiceField
        legend="Units of the kit sheet"
        name="kit-units"
        value={units}
        choices={[
          ["metric", "Metric: L, °C"],
          ["us", "US: gal, °F"],
        ]}
        onChange={setUnits}
      />
      <button type="button" class="main-action" disabled={busy} onClick={() => void write("Kit")}>
        {busy ? "Writing…" : "Write the kit sheet"}
      </button>
      <div aria-live="polite" class="outcome">
        {outcome?.kind === "failed" && <p class="bad">{outcome.message}</p>}
        {outcome?.kind === "taken" && (
          <>
            <p class="bad">{outcome.message}</p>
            <button type="button" onClick={() => void write(outcome.freeName)}>
              Use “{outcome.freeName}”
            </button>
          </>
        )}
      </div>
    </>
  );
}
