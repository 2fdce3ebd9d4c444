import { useEffect, useState } from "preact/hooks";
import { unitWords } from "../../workbook/batch/unit-words";
import { batchDates, datedBatch, type DatedBatch } from "../../workbook/brewing/calendar/batch-dates";
import { batchToRead } from "../../workbook/batch/read/batch-sheets";
import { inWorkbook, type Done } from "../sheets/in-workbook";
import { today, typedDay } from "../fields/typed";
import { Backwards } from "./backwards";
import { DateList } from "./date-list";
import { SaveDates } from "./save-dates";
import "./calendar.css";

/** The coming dates of the batch in front, for a calendar; and from a day wanted backwards. It only reads the sheet. */
export function Calendar() {
  const [read, setRead] = useState<Done<DatedBatch | undefined>>();
  const look = async () =>
    setRead(
      await inWorkbook("The sheet could not be read.", async (context) => {
        const sheet = await batchToRead(context);
        return sheet && datedBatch(sheet);
      }),
    );
  useEffect(() => void look(), []);
  const batch = read?.kind === "done" ? read.result : undefined;
  return (
    <section class="screen" aria-labelledby="calendar-title">
      <h1 id="calendar-title">Calendar</h1>
      <p class="lead">What is to come, from the brew day to the first taste.</p>
      <div aria-live="polite">
        {!read && <p>Reading the sheet…</p>}
        {read?.kind === "failed" && <p class="bad">{read.message}</p>}
        {read?.kind === "done" && !batch && (
          <p>This is not a batch sheet. Go to one in the workbook, then look again; below you can plan without one.</p>
        )}
        {batch && <Coming batch={batch} />}
      </div>
      <button type="button" onClick={() => void look()}>
        Look again
      </button>
      <Backwards
        units={batch?.units ?? "metric"}
        temperature={batch?.conditioningTemperature}
        temperatureUnit={unitWords(batch?.units ?? "metric").temperature}
        key={batch?.id}
      />
    </section>
  );
}

function Coming({ batch }: { readonly batch: DatedBatch }) {
  const dates = batchDates(batch);
  const now = typedDay(today()) ?? 0;
  const coming = dates.filter(({ day }) => day >= now);
  return (
    <>
      <h2>{batch.name}</h2>
      {dates.length === 0 && <p>The sheet has no brew day yet: type a date into “Brewed on”.</p>}
      {dates.length > 0 && coming.length === 0 && <p>All its dates are past; the last was {dates.at(-1)?.title.toLowerCase()}.</p>}
      {coming.length > 0 && (
        <>
          <DateList dates={coming} />
          <SaveDates batch={batch} dates={coming} />
        </>
      )}
    </>
  );
}
