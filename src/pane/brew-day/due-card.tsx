import type { TimedLine } from "../../workbook/companion/brew-day/day-state";
import { clockTime, timeLeft } from "./countdown";
import { WhyButton } from "./why-button";

/** What takes its time is started, what is done in a moment is done. */
const actionOf = ({ kind, boilMinute }: TimedLine): string => (kind === "boil begins" || (kind === "step" && boilMinute === undefined) ? "Start" : "Done");

/** The line that is due: to be read from across the kitchen, and pressed with wet hands. */
export function DueCard({ line, now, busy, isColoured, onDone }: { readonly line: TimedLine; readonly now: number; readonly busy: boolean; readonly isColoured: boolean; readonly onDone: () => void }) {
  const due = now >= line.dueAt;
  const late = now - line.dueAt >= 60_000;
  const action = actionOf(line);
  return (
    <article class={due && isColoured ? "due due-now" : "due"} aria-labelledby="due-what">
      <p class="countdown">
        {(late || !due) && <span class="countdown-word">{late ? "Late by" : "In"} </span>}
        <span>{due && !late ? "Now" : timeLeft(line.dueAt, now)}</span>
      </p>
      <h2 id="due-what">
        {line.what}
        {line.amount && <span class="amount"> {line.amount}</span>}
      </h2>
      {line.caution && <p class="caution">{line.caution}</p>}
      <WhyButton why={line.why} />
      <button type="button" class="big main-action" disabled={busy} aria-label={`${action}: ${line.what}`} onClick={onDone}>
        {action}
      </button>
      <p class="hint">{due ? `It was due at ${clockTime(line.dueAt)}.` : `Due at ${clockTime(line.dueAt)}.`}</p>
    </article>
  );
}
