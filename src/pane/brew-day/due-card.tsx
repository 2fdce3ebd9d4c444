import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import type { TimedLine } from "../../workbook/brewing/companion/brew-day/day-lines";
import { instantOf } from "../../workbook/brewing/companion/wall-clock";
import type { TradeWord } from "../../functions/trade-words";
import { TermNotes } from "../parts/term-notes";
import { intoSight } from "../parts/into-sight";
import { clockTime, inWords, timeLeft } from "./countdown";
import { WhyButton } from "./why-button";

/** What takes its time is started, what is done in a moment is done. */
const actionOf = ({ kind, boilMinute }: TimedLine): string =>
  kind === "boil begins" || kind === "stand" || (kind === "step" && boilMinute === undefined) ? "Start" : "Done";

interface DueCardProps {
  readonly line: TimedLine;
  readonly now: number;
  readonly busy: boolean;
  readonly isColoured: boolean;
  /** The day begins with this line, later than planned. */
  readonly beginsNow: boolean;
  /** Minutes by which it would be marked too early at an instant to go unasked; 0 = none. */
  readonly earlyAt: (instant: number) => number;
  /** What else speaks against marking it as things stand. */
  readonly doubts: readonly string[];
  /** What this line says for the first time on this day. */
  readonly terms: readonly TradeWord[];
  readonly onDone: () => void;
  /** What this line asks to be measured. */
  readonly children?: ComponentChildren;
}

/** The line that is due: to be read from across the kitchen, and pressed with wet hands. */
export function DueCard({ line, now, busy, isColoured, beginsNow, earlyAt, doubts, terms, onDone, children }: DueCardProps) {
  const [asking, setAsking] = useState(false);
  const due = now >= line.dueAt;
  const late = !beginsNow && now - line.dueAt >= 60_000;
  const action = actionOf(line);
  const earlyMinutes = earlyAt(now);
  // The second press of a double click falls on the card of the next line, and is not meant for it.
  // By the clock of the press, which is what gets written, not by what the screen last showed.
  const press = () => (earlyAt(Date.now()) > 0 || doubts.length > 0 ? setAsking(true) : onDone());
  return (
    <article
      class={due && isColoured ? "due due-now" : "due"}
      aria-labelledby="due-what"
      onKeyDown={({ key }) => key === "Escape" && setAsking(false)}
    >
      <p class="countdown">
        {(late || !due) && <span class="countdown-word">{late ? "Late by" : "In"} </span>}
        <span>{beginsNow ? "Start now" : due && !late ? "Now" : timeLeft(line.dueAt, now)}</span>
      </p>
      <h2 id="due-what">
        {line.what}
        {line.amount && <span class="amount"> {line.amount}</span>}
      </h2>
      {line.caution && <p class="caution">{line.caution}</p>}
      <TermNotes terms={terms} />
      <WhyButton why={line.why} />
      {children}
      <button
        type="button"
        class="big main-action"
        disabled={busy}
        aria-label={`${action}: ${line.what}`}
        onClick={(event) => event.detail < 2 && press()}
      >
        {action}
      </button>
      {asking && (earlyMinutes > 0 || doubts.length > 0) && (
        <div role="group" aria-labelledby="early-question" ref={intoSight}>
          <div id="early-question" class="caution">
            {doubts.map((doubt) => (
              <p key={doubt}>{doubt}</p>
            ))}
            <p>
              {earlyMinutes > 0
                ? `${inWords(earlyMinutes)} before its time: it is due at ${clockTime(line.dueAt)}. Has it really been ${action === "Start" ? "begun" : "done"} already?`
                : `${action === "Start" ? "Begin it" : "Mark it done"} all the same?`}
            </p>
          </div>
          <button type="button" class="big" disabled={busy} onClick={onDone}>
            Yes, write {clockTime(now)}
          </button>
          <button type="button" class="big" onClick={() => setAsking(false)}>
            No, not yet
          </button>
        </div>
      )}
      <p class="hint">
        {beginsNow
          ? `Planned for ${clockTime(instantOf(line.planned))}. The plan shifts with you.`
          : due
            ? `It was due at ${clockTime(line.dueAt)}.`
            : `Due at ${clockTime(line.dueAt)}.`}
      </p>
    </article>
  );
}
