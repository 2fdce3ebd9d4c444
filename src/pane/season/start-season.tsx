import { useState } from "preact/hooks";
import type { UnitSystem } from "../../functions/quantities";
import { ChoiceField } from "../new-batch/choice-field";
import type { Outcome } from "../new-batch/write-batch";
import { seasonSheetName, writeSeason } from "./write-season";

/** Asks for the units and writes the season sheet. */
export function StartSeason({ onWritten }: { readonly onWritten: () => void }) {
  const [units, setUnits] = useState<UnitSystem>("metric");
  const [busy, setBusy] = useState(false);
  const [outcome, setOutcome] = useState<Outcome>();
  const write = async (sheetName: string) => {
    setBusy(true);
    const result = await writeSeason(sheetName, units);
    setBusy(false);
    setOutcome(result);
    if (result.kind === "written") onWritten();
  };
  return (
    <>
      <ChoiceField
        legend="Show volumes and colours in"
        name="season-units"
        value={units}
        choices={[
          ["metric", "Metric: L, EBC"],
          ["us", "US: gal, SRM"],
        ]}
        onChange={setUnits}
      />
      <p class="hint">Each batch keeps its own units on its own sheet.</p>
      <button type="button" class="main-action" disabled={busy} onClick={() => void write(seasonSheetName)}>
        {busy ? "Writing…" : "Write the season sheet"}
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
