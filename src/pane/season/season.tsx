import { useEffect, useState } from "preact/hooks";
import { renewSeason } from "../../workbook/sheets/season/insert-season";
import type { SeasonReport, SeasonYear } from "../../workbook/sheets/season/refresh-season";
import { GoTo } from "../parts/go-to";
import { CopiedSheets } from "../sheets/copied-sheets";
import { inWorkbook } from "../sheets/in-workbook";
import { PassedOver } from "../sheets/passed-over";
import { refreshNow, onSeasonChange, seasonState } from "./follow-season";
import { StartSeason } from "./start-season";
import { Versions } from "./versions";

/** The season sheet: writes it, says what it shows of the workbook as it is now, closes years, and compares the versions of a recipe. */
export function Season() {
  const [state, setState] = useState(seasonState);
  const [busy, setBusy] = useState(false);
  const [said, setSaid] = useState("");
  const work = async (what: () => Promise<string | void>) => {
    setBusy(true);
    setSaid("");
    setSaid((await what()) ?? "");
    setBusy(false);
  };
  const refresh = () => void work(() => refreshNow());
  useEffect(() => {
    const stop = onSeasonChange(() => setState(seasonState()));
    refresh();
    return stop;
  }, []);
  const renew = () =>
    work(async () => {
      const done = await inWorkbook("The season sheet was not written anew, and the workbook is as it was.", renewSeason);
      if (done.kind !== "done") return done.message;
      await refreshNow();
      return `“${done.result}” holds the season in today's layout. The older sheet is as it was, and is not followed any more: you may delete it.`;
    });
  return (
    <section class="screen" aria-labelledby="season-title">
      <h1 id="season-title">Season</h1>
      <p class="lead">
        One sheet over all batches: dates, states, figures planned and reached, bests, and how much was brewed in the year.
      </p>
      {state.kind === "unknown" && <p role="status">Looking at the workbook…</p>}
      {state.kind === "none" && <StartSeason onWritten={refresh} />}
      {(state.kind === "there" || state.kind === "failed") && (
        <button type="button" class="main-action" disabled={busy} onClick={refresh}>
          {busy ? "Looking…" : "Bring it up to date"}
        </button>
      )}
      {state.kind === "older" && (
        <button type="button" class="main-action" disabled={busy} onClick={() => void renew()}>
          {busy ? "Writing…" : "Write it in today's layout"}
        </button>
      )}
      <div aria-live="polite" class="outcome">
        {said !== "" && <p>{said}</p>}
        {state.kind === "there" && <Report report={state.report} onProblem={setSaid} />}
        {state.kind === "older" && <p>{state.message}</p>}
        {state.kind === "failed" && <p class="bad">{state.message}</p>}
      </div>
      {state.kind === "there" && <CopiedSheets groups={state.report.copies} onGiven={refresh} />}
      {state.kind === "there" && state.report.years.length > 0 && (
        <Years years={state.report.years} busy={busy} change={(year, isClosed) => void work(() => refreshNow({ year, isClosed }))} />
      )}
      {state.kind === "there" && state.report.batches > 1 && <Versions />}
    </section>
  );
}

const quoted = (names: readonly string[]): string => names.map((name) => `“${name}”`).join(", ");

function Report({ report, onProblem }: { readonly report: SeasonReport; readonly onProblem: (message: string) => void }) {
  const { sheetName, batches, sheets, written, added, kept, dropped, unplugged } = report;
  return (
    <>
      <p class="good">
        “{sheetName}” shows {batches === 1 ? "the one batch" : `all ${batches} batches`} of this workbook.{" "}
        {written === 0 ? "Nothing had to be changed." : `${written} ${written === 1 ? "row was" : "rows were"} written.`}
      </p>
      {added.length > 0 && <p>New in the list: {quoted(added)}.</p>}
      {dropped.length > 0 && <p>Left the list: {quoted(dropped)}.</p>}
      {kept.length > 0 && (
        <p>
          Their sheets are gone, but they were brewed, or you had typed something beside them, so they stay at the end of the list with
          their last figures: {quoted(kept)}. To let one go, empty its name.
        </p>
      )}
      <PassedOver unplugged={unplugged} to="have it in the season" />
      {sheets.length > 0 && (
        <details>
          <summary>Go to a batch</summary>
          <p class="side-by-side">
            {sheets.map((sheet) => (
              <GoTo key={sheet} place={{ sheet, range: "A1" }} label={sheet} onProblem={onProblem} />
            ))}
          </p>
        </details>
      )}
      <p class="hint">
        While this pane is open the list follows new, renamed, moved and deleted sheets by itself, and keeps the figures of each sheet that
        you leave.
      </p>
    </>
  );
}

interface YearsProps {
  readonly years: readonly SeasonYear[];
  readonly busy: boolean;
  readonly change: (year: number, isClosed: boolean) => void;
}

/** Years whose figures are to stand, whatever becomes of their sheets. */
function Years({ years, busy, change }: YearsProps) {
  return (
    <>
      <h2>Close a year</h2>
      <p class="hint">
        The figures of a closed year stay as they are, whatever is changed on its sheets. To carry on in a new workbook, save this one under
        another name and delete the sheets of the closed year there: its rows, volumes and costs stay in the list, what is left stays in the
        stores, and the kit keeps what it has learned.
      </p>
      {years.map(({ year, batches, closed }) => (
        <p key={year}>
          {year}: {batches} {batches === 1 ? "batch" : "batches"}
          {closed === 0 ? "" : closed === batches ? ", closed" : `, ${batches - closed} of them not closed yet`}{" "}
          {closed < batches && (
            <button type="button" disabled={busy} onClick={() => change(year, true)}>
              Close {year}
            </button>
          )}
          {closed > 0 && (
            <button type="button" disabled={busy} onClick={() => change(year, false)}>
              Open {year} again
            </button>
          )}
        </p>
      ))}
    </>
  );
}
