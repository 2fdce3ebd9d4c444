import { counted } from "../../workbook/grid/words/counted";
import { useMemo, useState } from "preact/hooks";
import { isoDay } from "../../workbook/grid/words/day-number";
import { logForecast } from "../../workbook/exchange/readings-file/log-forecast";
import type { Log } from "../../workbook/exchange/readings-file/read-log";
import { keepLog, roomForReadings, rowsForSheet, writeReadings } from "../../workbook/exchange/readings-file/write-readings";
import { inWorkbook, type Done } from "../sheets/in-workbook";
import { Outcome } from "../sheets/outcome";
import type { Batches } from "../sheets/use-batches";

const shownReasons = 12;

/** What all readings say, what was left out and why, and where they may be written. */
export function LogResult({ batches, log, corrected }: { readonly batches: Batches; readonly log: Log; readonly corrected: boolean }) {
  const { chosen } = batches;
  const [outcome, setOutcome] = useState<Done<string>>();
  const [busy, setBusy] = useState(false);
  const original = chosen?.cells.number("og");
  const expected = chosen?.cells.number("fg_expected");
  const forecast = useMemo(
    () => logForecast(log.rows, original === "" ? undefined : original, expected === "" ? undefined : expected),
    [log, original, expected],
  );
  const few = chosen ? rowsForSheet(log.rows, roomForReadings(chosen.cells)).length : 0;

  const act = async (action: (context: Excel.RequestContext, sheetName: string) => Promise<string>) => {
    if (!chosen) return;
    setBusy(true);
    setOutcome(await inWorkbook("Nothing was written, and the workbook is as it was.", (context) => action(context, chosen.sheetName)));
    setBusy(false);
    await batches.refresh();
  };

  return (
    <>
      <h2>By {log.rows.length === 1 ? "the one reading" : `all ${log.rows.length} readings`}</h2>
      {forecast ? (
        <table class="figures">
          <tbody>
            <Line label="Where it stands" value={forecast.state} />
            <Line
              label="Final gravity, by the curve"
              value={
                forecast.finalGravity === undefined
                  ? "–"
                  : `${forecast.finalGravity.toFixed(4)}${forecast.finalGravityPlusOrMinus === undefined ? "" : ` ± ${forecast.finalGravityPlusOrMinus.toFixed(4)}`}`
              }
            />
            <Line
              label="Gets there on"
              value={
                forecast.day === undefined
                  ? "–"
                  : `${isoDay(forecast.day)}${forecast.dayPlusOrMinus === undefined ? "" : ` ± ${forecast.dayPlusOrMinus.toFixed(1)} days`}`
              }
            />
            <Line label="Done" value={forecast.percentDone === undefined ? "–" : `${forecast.percentDone.toFixed(0)} %`} />
          </tbody>
        </table>
      ) : (
        <p class="hint">No forecast yet: it needs readings that fall, and an original gravity.</p>
      )}
      <p class="hint">A forecast is no reading: package only when two readings a day apart agree.</p>
      {log.leftOut.length > 0 && (
        <>
          <h2>Left out: {log.leftOut.length}</h2>
          <ul>
            {log.leftOut.slice(0, shownReasons).map(({ line, reason }) => (
              <li key={line}>
                Line {line}: {reason}
              </li>
            ))}
            {log.leftOut.length > shownReasons && <li>and {log.leftOut.length - shownReasons} more</li>}
          </ul>
        </>
      )}
      {chosen && log.rows.length > 0 && (
        <>
          <button
            type="button"
            class="main-action"
            disabled={busy || few === 0}
            onClick={() =>
              void act(
                async (context, sheetName) =>
                  `On “${sheetName}”: ${counted(await writeReadings(context, sheetName, log.rows, corrected), "reading")}.`,
              )
            }
          >
            {few === 0 ? "The table of readings is full" : `Write ${few} of them into “${chosen.sheetName}”`}
          </button>
          <p class="hint">
            {few < log.rows.length
              ? "Those that show the course: the first, the last, the one a day before it, and where the curve bends."
              : "All of them fit."}
          </p>
          <button
            type="button"
            disabled={busy}
            onClick={() =>
              void act(
                async (context, sheetName) =>
                  `${log.rows.length === 1 ? "The reading is" : `All ${log.rows.length} readings are`} on “${await keepLog(context, sheetName, batches.workbook?.sheetNames ?? [], chosen.contents.units, log.rows)}”.`,
              )
            }
          >
            Keep all {log.rows.length} on a sheet of their own
          </button>
        </>
      )}
      <Outcome outcome={outcome}>{(words) => <p>{words}</p>}</Outcome>
    </>
  );
}

function Line({ label, value }: { readonly label: string; readonly value: string }) {
  return (
    <tr>
      <th scope="row">{label}</th>
      <td>{value}</td>
    </tr>
  );
}
