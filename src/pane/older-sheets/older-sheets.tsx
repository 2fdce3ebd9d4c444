import { useEffect, useState } from "preact/hooks";
import type { MigrationReport, SheetOutlook } from "../../workbook/care/migrate";
import { bringAlong, lookAtSheets, type Answer } from "./ask-workbook";

/** Batch sheets that an older Gylebook made, and a button that brings them to today's plan. */
export function OlderSheets() {
  const [found, setFound] = useState<Answer<SheetOutlook[]>>();
  const [report, setReport] = useState<Answer<MigrationReport>>();
  const [busy, setBusy] = useState(false);
  const look = async () => setFound(await lookAtSheets());
  useEffect(() => void look(), []);

  const bring = async () => {
    setBusy(true);
    setReport(await bringAlong());
    await look();
    setBusy(false);
  };

  const sheets = found?.ok ? found.value : [];
  const older = sheets.filter(({ state }) => state === "older");
  return (
    <section class="screen" aria-labelledby="older-sheets-title">
      <h1 id="older-sheets-title">Older sheets</h1>
      <p class="lead">
        A batch sheet keeps the plan of the Gylebook that made it. Newer screens may need cells that an older sheet does not have.
      </p>
      <div aria-live="polite">
        {!found && <p>Looking through the workbook…</p>}
        {found && !found.ok && <p class="bad">{found.problem}</p>}
        {found?.ok && <p>{summary(sheets)}</p>}
        {sheets.length > 0 && (
          <ul>
            {sheets.map(({ sheetName, state, reason, version }) => (
              <li key={sheetName}>
                “{sheetName}”: {state === "current" && "up to date"}
                {state === "older" && `of plan ${version}, can be updated`}
                {(state === "newer" || state === "refused") && `stays as it is, since ${reason}`}
              </li>
            ))}
          </ul>
        )}
      </div>
      {older.length > 0 && (
        <>
          <p>
            Today's words, formulas and cautions take the place of those that the older Gylebook wrote, so results can change; new cells go
            beside the printed part, and an old chart gives way to today's. What you typed stays as it is.
          </p>
          <button type="button" class="main-action" disabled={busy} onClick={() => void bring()}>
            {busy ? "Writing…" : `Bring ${older.length === 1 ? "the older sheet" : `all ${older.length} older sheets`} to today's plan`}
          </button>
        </>
      )}
      <button type="button" disabled={busy} onClick={() => void look()}>
        Look again
      </button>
      <div aria-live="polite" class="outcome">
        {report && !report.ok && <p class="bad">{report.problem}</p>}
        {report?.ok &&
          report.value.migrated.map(({ sheetName, added, stays }) => (
            <p key={sheetName} class="good">
              “{sheetName}” has been given {added.join(", ")}.{stays.map((sentence) => ` ${sentence}`)}
            </p>
          ))}
      </div>
    </section>
  );
}

function summary(sheets: readonly SheetOutlook[]): string {
  if (sheets.length === 0) return "This workbook has no batch sheets.";
  const behind = sheets.filter(({ state }) => state !== "current").length;
  return behind === 0
    ? "Every batch sheet follows today's plan."
    : `${behind} of ${sheets.length} batch sheets ${behind === 1 ? "follows" : "follow"} another plan than today's:`;
}
