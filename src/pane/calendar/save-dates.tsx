import { useEffect, useRef, useState } from "preact/hooks";
import type { BatchDate, DatedBatch } from "../../workbook/brewing/calendar/batch-dates";
import { calendarFile, calendarFileName } from "../../workbook/brewing/calendar/calendar-file";

/** The dates as a calendar file: to download, and as text for a host that blocks downloads. */
export function SaveDates({ batch, dates }: { readonly batch: DatedBatch; readonly dates: readonly BatchDate[] }) {
  const [text, setText] = useState<string>();
  const [said, setSaid] = useState("");
  const [address, setAddress] = useState<string>();
  const field = useRef<HTMLTextAreaElement>(null);
  const name = calendarFileName(batch, dates);

  useEffect(() => {
    if (text === undefined) return;
    const made = URL.createObjectURL(new Blob([text], { type: "text/calendar;charset=utf-8" }));
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [text]);

  const copy = async () => {
    field.current?.select();
    try {
      await navigator.clipboard.writeText(text ?? "");
      setSaid("Copied. Paste it into an empty file whose name ends in .ics, and open that with your calendar.");
    } catch {
      setSaid("Copying is not allowed here; the text is selected: press Ctrl+C, or Cmd+C on a Mac.");
    }
  };

  return (
    <>
      <button type="button" class="main-action" onClick={() => setText(calendarFile(batch, dates, new Date()))}>
        Make a calendar file
      </button>
      {text !== undefined && address !== undefined && (
        <div class="outcome">
          <p>
            <a href={address} download={name}>
              Download “{name}”
            </a>
          </p>
          <p class="hint">
            Import it again later, and the dates that have changed move in your calendar. Excel on the desktop may block the download; then
            copy the text.
          </p>
          <div class="field">
            <label for="calendar-text">The file as text</label>
            <textarea id="calendar-text" ref={field} readOnly rows={6} value={text} />
          </div>
          <button type="button" onClick={() => void copy()}>
            Copy the text
          </button>
          <p role="status" class="hint">
            {said}
          </p>
        </div>
      )}
    </>
  );
}
