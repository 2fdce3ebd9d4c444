import { useEffect, useState } from "preact/hooks";
import type { SeasonReport } from "../../workbook/sheets/season/refresh-season";
import { CopiedSheets } from "../sheets/copied-sheets";
import { PassedOver } from "../sheets/passed-over";
import { refreshNow, onSeasonChange, seasonState } from "./follow-season";
import { StartSeason } from "./start-season";

/** The season sheet: writes it, and says what it shows of the workbook as it is now. */
export function Season() {
  const [state, setState] = useState(seasonState);
  const [busy, setBusy] = useState(false);
  const refresh = async () => {
    setBusy(true);
    await refreshNow();
    setBusy(false);
  };
  useEffect(() => {
    const stop = onSeasonChange(() => setState(seasonState()));
    void refresh();
    return stop;
  }, []);
  return (
    <section class="screen" aria-labelledby="season-title">
      <h1 id="season-title">Season</h1>
      <p class="lead">
        One sheet over all batches: dates, states, figures planned and reached, bests, and how much was brewed in the year.
      </p>
      {state.kind === "unknown" && <p role="status">Looking at the workbook…</p>}
      {state.kind === "none" && <StartSeason onWritten={() => void refresh()} />}
      {(state.kind === "there" || state.kind === "failed") && (
        <button type="button" class="main-action" disabled={busy} onClick={() => void refresh()}>
          {busy ? "Looking…" : "Bring it up to date"}
        </button>
      )}
      <div aria-live="polite" class="outcome">
        {state.kind === "there" && <Report report={state.report} />}
        {state.kind === "failed" && <p class="bad">{state.message}</p>}
      </div>
      {state.kind === "there" && <CopiedSheets groups={state.report.copies} onGiven={() => void refresh()} />}
    </section>
  );
}

const quoted = (names: readonly string[]): string => names.map((name) => `“${name}”`).join(", ");

function Report({ report: { sheetName, batches, written, added, kept, dropped, unplugged } }: { readonly report: SeasonReport }) {
  return (
    <>
      <p class="good">
        “{sheetName}” shows {batches === 1 ? "the one batch" : `all ${batches} batches`} of this workbook.{" "}
        {written === 0 ? "Nothing had to be changed." : `${written} ${written === 1 ? "row was" : "rows were"} written.`}
      </p>
      {added.length > 0 && <p>New in the list: {quoted(added)}.</p>}
      {dropped.length > 0 && <p>Their sheets are gone, so they left the list: {quoted(dropped)}.</p>}
      {kept.length > 0 && (
        <p>
          Their sheets are gone, but you had typed something beside them, so they stay at the end of the list: {quoted(kept)}. Empty those
          cells to let them go.
        </p>
      )}
      <PassedOver unplugged={unplugged} to="have it in the season" />
      <p class="hint">
        While this pane is open the list follows new, renamed, moved and deleted sheets by itself. The figures are formulas and need no
        button.
      </p>
    </>
  );
}
