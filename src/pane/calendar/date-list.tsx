import type { BatchDate } from "../../workbook/brewing/calendar/batch-dates";
import { isoDay } from "../../workbook/grid/words/day-number";
import { dayShown, momentShown } from "../../workbook/grid/words/day-words";

/** Dates one below the other, each with what to do and where it comes from. */
export function DateList({ dates }: { readonly dates: readonly BatchDate[] }) {
  return (
    <ol class="dates">
      {dates.map(({ kind, day, title, words, basis }) => (
        <li key={kind}>
          <strong>
            <time dateTime={isoDay(day)}>{day % 1 > 0 ? momentShown(day) : dayShown(day)}</time> {title}
          </strong>
          <br />
          {words} <span class="hint">({basis})</span>
        </li>
      ))}
    </ol>
  );
}
