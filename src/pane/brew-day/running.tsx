import type { Timer } from "../../workbook/brewing/companion/brew-day/timers";
import { clockTime, isForgotten, lengthOfTime, timeLeft } from "./countdown";

/** What runs, with its time left. It is not read out by itself: every second would be too much. */
export function Running({ timer, now }: { readonly timer: Timer | undefined; readonly now: number }) {
  if (!timer) return null;
  const { what, caution, startedAt, endsAt, doneInIt } = timer;
  const over = now >= endsAt;
  return (
    <section aria-labelledby="running-title">
      <h2 id="running-title">Running</h2>
      <div class={over ? "running over" : "running"}>
        <span class="left">{over ? `over by ${lengthOfTime(now - endsAt)}` : timeLeft(endsAt, now)}</span>
        <span class="what">
          {what}
          <small> since {clockTime(startedAt)}</small>
        </span>
        {doneInIt.length > 0 && (
          <p class="hint">Done in it: {doneInIt.map(({ what: part, at }) => `${part} ${clockTime(at)}`).join("; ")}</p>
        )}
        {isForgotten(endsAt, now) && <p class="caution">Did you forget to mark it done?</p>}
        {caution && <p class="caution">{caution}</p>}
      </div>
    </section>
  );
}
