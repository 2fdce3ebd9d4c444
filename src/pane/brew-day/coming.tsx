import type { TimedLine } from "../../workbook/brewing/companion/brew-day/day-lines";
import { clockTime, inWords } from "./countdown";

/** What follows, with the time of the clock as things go; without `now`, only the plan. */
export function Coming({ title, lines, now }: { readonly title: string; readonly lines: readonly TimedLine[]; readonly now?: number }) {
  if (lines.length === 0) return null;
  return (
    <section aria-labelledby="coming-title">
      <h2 id="coming-title">{title}</h2>
      <ol class="coming">
        {lines.map((line) => (
          <li key={line.row}>
            <span class="at">{clockTime(line.dueAt)}</span>
            <span class="what">
              {line.what} {line.amount}
            </span>
            {now !== undefined && (
              <span class="left">{line.dueAt > now ? `in ${inWords(Math.ceil((line.dueAt - now) / 60_000))}` : <strong>now</strong>}</span>
            )}
            {line.caution && <p class="caution">{line.caution}</p>}
          </li>
        ))}
      </ol>
    </section>
  );
}

/** Lines without a time although later ones have theirs: they wait to be marked or left. */
export function Missed({
  lines,
  busy,
  onDone,
}: {
  readonly lines: readonly TimedLine[];
  readonly busy: boolean;
  readonly onDone?: (line: TimedLine) => void;
}) {
  if (lines.length === 0) return null;
  return (
    <section aria-labelledby="missed-title">
      <h2 id="missed-title">Skipped</h2>
      <ul class="missed">
        {lines.map((line) => (
          <li key={line.row}>
            <span class="what">
              {line.what} {line.amount}
            </span>
            {onDone && (
              <button type="button" class="big" disabled={busy} aria-label={`Done: ${line.what}`} onClick={() => onDone(line)}>
                Done
              </button>
            )}
            {line.caution && <p class="caution">{line.caution}</p>}
          </li>
        ))}
      </ul>
    </section>
  );
}
