import { ownEntry } from "../../functions/own-entry";
import { useEffect, useState } from "preact/hooks";
import { courseOf, type Course } from "../../workbook/brewing/fermentation/fermentation-curve";
import { fermentationLog, type FermentationLog } from "../../workbook/brewing/fermentation/fermentation-log";
import { notTellingYet } from "../../workbook/brewing/fermentation/under-way";
import { unitWords } from "../../workbook/batch/unit-words";
import { batchToRead } from "../../workbook/batch/read/batch-sheets";
import { useOpenScreen } from "../parts/open-screen";
import { inWorkbook, type Done } from "../sheets/in-workbook";
import { dayShown, momentShown } from "../../workbook/grid/words/day-words";
import { FermentationChart } from "./fermentation-chart";
import { FermentationTable } from "./fermentation-table";
import "./fermentation.css";

/** Where the fermentation of the batch in front stands, drawn and in words; it only reads the sheet. */
export function Fermentation() {
  const [read, setRead] = useState<Done<FermentationLog | undefined>>();
  const look = async () =>
    setRead(
      await inWorkbook("The sheet could not be read.", async (context) => {
        const sheet = await batchToRead(context);
        return sheet && fermentationLog(sheet);
      }),
    );
  useEffect(() => void look(), []);
  const openScreen = useOpenScreen();
  return (
    <section class="screen" aria-labelledby="fermentation-title">
      <h1 id="fermentation-title">Fermentation</h1>
      <div aria-live="polite">
        {!read && <p>Reading the sheet…</p>}
        {read?.kind === "failed" && <p class="bad">{read.message}</p>}
        {read?.kind === "done" &&
          (read.result ? <Standing log={read.result} /> : <p>This is not a batch sheet. Go to one in the workbook, then look again.</p>)}
      </div>
      {read?.kind === "done" && read.result && (
        <button type="button" class="main-action" onClick={() => openScreen("Reading")}>
          Type the next reading
        </button>
      )}
      <button type="button" onClick={() => void look()}>
        Look again
      </button>
    </section>
  );
}

const verdicts: Readonly<Record<string, string>> = {
  "not begun": "Not begun: the gravity has not begun to fall.",
  working: "Working: the gravity is still falling.",
  nearly: "Nearly there: it falls very slowly now.",
  steady: "Steady: the gravity no longer falls.",
  stalled: "Stalled: it has stopped well above the gravity expected at the end. This is not finished beer.",
  rising: "Rising: beer cannot do that. One of the readings is wrong.",
};

function Standing({ log }: { readonly log: FermentationLog }) {
  const course = courseOf(log);
  const { temperature } = unitWords(log.units);
  const newest = log.gravities.at(-1);
  const notYet = notTellingYet({ ...log, gravity: newest?.value, lastReading: newest?.day });
  return (
    <>
      <p class="lead">{log.batchName || log.sheetName}</p>
      <p class="verdict">
        {log.verdict === "steady" && log.verdictRests !== ""
          ? `Steady, by ${log.verdictRests}.`
          : (notYet ??
            ownEntry(verdicts, log.verdict) ??
            (log.gravities.length === 0 ? "Nothing has been read yet." : "No reading since the yeast went in."))}
      </p>
      {log.nextStep && <p>{log.nextStep}</p>}
      <Outlook log={log} course={course} />
      <FermentationChart log={log} course={course} temperatureUnit={temperature} />
      {course.reason && log.gravities.length > 0 && <p class="hint">No curve yet. {course.reason}</p>}
      <FermentationTable log={log} temperatureUnit={temperature} />
    </>
  );
}

/** What is to come, as far as the readings tell. */
function Outlook({ log, course }: { readonly log: FermentationLog; readonly course: Course }) {
  const { forecast } = course;
  return (
    <>
      {forecast && (
        <p>
          By its curve it should finish near {forecast.finalGravity.toFixed(3)} (± {forecast.plusOrMinusGravity.toFixed(3)}), about{" "}
          {dayShown(forecast.day)} (± {forecast.plusOrMinusDays.toFixed(1)} days). A forecast is no reading: bottle only when the sheet says
          steady.
        </p>
      )}
      {log.nextReading !== undefined && <p>Read again: {momentShown(log.nextReading)}.</p>}
    </>
  );
}
