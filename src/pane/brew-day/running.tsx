import type { Timer } from "../../workbook/brewing/companion/brew-day/timers";
import { clockTime, isForgotten, lengthOfTime, timeLeft } from "./countdown";

/** Everything that runs, each with its own time left. Timers are not read out by themselves: every second would be too much. */
export function Running({ timers, now }: { readonly timers: readonly Timer[]; readonly now: number }) {
  if (timers.length === 0) return null;
  return (
    <section aria-labelledby="running-title">
      <h2 id="running-title">Running</h2>
      <ul class="running">
        {timers.map(({ row, what, caution, startedAt, endsAt, inBoil }) => {
          const over = now >= endsAt;
          return (
            <li key={row} class={over ? "over" : undefined}>
              <span class="left">{over ? `over by ${lengthOfTime(now - endsAt)}` : timeLeft(endsAt, now)}</span>
              <span class="what">
                {what}
                <small>{inBoil ? ` in for ${lengthOfTime(now - startedAt)}` : ` since ${clockTime(startedAt)}`}</small>
              </span>
              {isForgotten(endsAt, now) && <p class="caution">Did you forget to mark it done?</p>}
              {!inBoil && caution && <p class="caution">{caution}</p>}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
