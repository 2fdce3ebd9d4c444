import type { BatchSheet } from "../../workbook/batch/read/batch-sheets";
import type { DayState } from "../../workbook/brewing/companion/brew-day/day-state";
import { brewToday } from "../../workbook/brewing/companion/brew-day/mark-line";
import { dayNumberAt, instantOf } from "../../workbook/brewing/companion/wall-clock";
import { dayShown } from "../../workbook/grid/words/day-words";
import type { useChange } from "../companion/use-change";
import { Coming } from "./coming";

interface AnotherDayProps {
  readonly sheet: BatchSheet;
  readonly state: DayState;
  readonly now: number;
  readonly busy: boolean;
  readonly make: ReturnType<typeof useChange>["make"];
}

/** Planned for another day than the clock shows: times of day would be read as that day's. */
export function AnotherDay({ sheet, state, now, busy, make }: AnotherDayProps) {
  const today = dayShown(dayNumberAt(now));
  return (
    <>
      <p class="lead">
        Planned for {dayShown(Number(sheet.number("brewed_on")))}; today is {today}.
      </p>
      <button type="button" class="big main-action" disabled={busy} onClick={() => void make((context) => brewToday(context, sheet, now))}>
        Brew today: write {today} as “Brewed on”
      </button>
      <Coming title="The day as planned" lines={state.lines.map((line) => ({ ...line, dueAt: instantOf(line.planned) }))} />
    </>
  );
}
