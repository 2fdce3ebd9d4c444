import { useState } from "preact/hooks";
import type { UnitSystem } from "../../functions/quantities";
import { ChoiceField } from "../new-batch/choice-field";
import type { Outcome } from "../new-batch/write-batch";
import { writeStores } from "./stores-work";

/** Asks for the units and writes the stores sheet. */
export function StartStores({ onWritten }: { readonly onWritten: () => void }) {
  const [units, setUnits] = useState<UnitSystem>("metric");
  const [busy, setBusy] = useState(false);
  const [outcome, setOutcome] = useState<Outcome>();
  const write = async (sheetName: string) => {
    setBusy(true);
    const result = await writeStores(sheetName, units);
    setBusy(false);
    setOutcome(result);
    if (result.kind === "written") onWritten();
  };
  return (
    <>
      <ChoiceField
        legend="Units of the stores"
        name="stores-units"
        value={units}
        choices={[
          ["metric", "Metric: kg, g, °C"],
          ["us", "US: lb, oz, °F"],
        ]}
        onChange={setUnits}
      />
      <p class="hint">Batches in other units draw from them all the same.</p>
      <button type="button" class="main-action" disabled={busy} onClick={() => void write("Stores")}>
        {busy ? "Writing…" : "Write the stores sheet"}
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
