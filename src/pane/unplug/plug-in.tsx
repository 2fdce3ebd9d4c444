import { useState } from "preact/hooks";
import { plugInFront, type Plugged } from "./unplug-work";

/** The way back: the sheet in front gets its GYLE formulas again. */
export function PlugIn() {
  const [outcome, setOutcome] = useState<Plugged>();
  const [busy, setBusy] = useState(false);
  const plug = async (leaveChanged: boolean) => {
    setBusy(true);
    setOutcome(await plugInFront(leaveChanged));
    setBusy(false);
  };
  return (
    <section aria-labelledby="plug-in-title">
      <h2 id="plug-in-title">Plug back in</h2>
      <p>
        Puts the GYLE formulas of this unplugged sheet back where they were. What somebody has typed over them since is never lost: you are
        told the cells first.
      </p>
      <button type="button" disabled={busy} onClick={() => void plug(false)}>
        {busy ? "Plugging in…" : "Plug this sheet in again"}
      </button>
      <div aria-live="polite" class="outcome">
        {outcome?.kind === "failed" && <p class="bad">{outcome.message}</p>}
        {outcome?.kind === "changed" && (
          <>
            <p class="bad">{outcome.message}</p>
            <button type="button" disabled={busy} onClick={() => void plug(true)}>
              Leave those cells, plug in all others
            </button>
          </>
        )}
        {outcome?.kind === "done" && (
          <>
            <p class="good">
              “{outcome.sheetName}”: {outcome.restored} {outcome.restored === 1 ? "formula is" : "formulas are"} GYLE’s again.
            </p>
            {outcome.left.length > 0 && <p>Left as they are: {outcome.left.map(({ cell, why }) => `${cell} (${why})`).join(", ")}.</p>}
          </>
        )}
      </div>
    </section>
  );
}
