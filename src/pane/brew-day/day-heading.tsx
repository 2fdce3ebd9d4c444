import { beginsNow, type DayState } from "../../workbook/brewing/companion/brew-day/day-state";
import { clockTime, inWords } from "./countdown";

const againstPlan = (minutes: number): string =>
  minutes === 0 ? "as planned" : minutes > 0 ? `${inWords(minutes)} later than planned` : `${inWords(minutes)} earlier than planned`;

/** The clock, the end of the day, and what does not fit. */
export function DayHeading({
  state,
  now,
  screenStaysOn,
}: {
  readonly state: DayState;
  readonly now: number;
  readonly screenStaysOn: boolean;
}) {
  return (
    <>
      <p class="clock">
        <strong>{clockTime(now)}</strong> Done at about {clockTime(state.endsAt)},{" "}
        {beginsNow(state, now) ? "when you start now" : againstPlan(state.lateMinutes)}.{screenStaysOn && " The screen stays on."}
      </p>
      {state.clockBehindMinutes > 0 && (
        <p class="bad" role="alert">
          This computer's clock is {inWords(state.clockBehindMinutes)} behind the last time in the sheet. Was it put back? Set the clock, or
          correct the times in the sheet: the countdowns use both.
        </p>
      )}
    </>
  );
}
