import { useMemo } from "preact/hooks";
import { dayLines } from "../../workbook/brewing/companion/brew-day/day-lines";
import { beginsNow, dayState } from "../../workbook/brewing/companion/brew-day/day-state";
import { batchIdOf, type BatchSheet } from "../../workbook/batch/read/batch-sheets";
import { useBatchSheet } from "../companion/use-batch-sheet";
import { useNow } from "../companion/use-now";
import { timeLeft } from "./countdown";
import { useSignalChoices } from "./signal-choices";
import { useDueSound } from "./use-due-sound";
import "./day-strip.css";

interface DayStripProps {
  readonly sheetName: string;
  readonly onOpen: () => void;
}

/** A line above every other screen while a brew day goes on: a hop must not be missed for a look at the yeast. */
export function DayStrip({ sheetName, onOpen }: DayStripProps) {
  const { front } = useBatchSheet(sheetName);
  return front.kind === "batch" ? <Strip sheet={front.sheet} onOpen={onOpen} /> : null;
}

function Strip({ sheet, onOpen }: { readonly sheet: BatchSheet; readonly onOpen: () => void }) {
  const now = useNow();
  const lines = useMemo(() => dayLines(sheet), [sheet]);
  const state = dayState(lines, now);
  const going = state?.phase === "going";
  const { sound, colour } = useSignalChoices();
  useDueSound(batchIdOf(sheet), going ? state.lines : [], now, sound);
  const next = going ? state.current : undefined;
  if (!state || !next) return null;
  const isDue = now >= next.dueAt;
  const more = state.coming.filter(({ dueAt }) => now >= dueAt).length;
  return (
    <aside class={isDue && colour ? "day-strip due-here" : "day-strip"} aria-label="Brew day under way">
      <p>
        <strong>{isDue ? (beginsNow(state, now) ? "Start now" : "Now") : timeLeft(next.dueAt, now)}</strong> {next.what} {next.amount}
        {more > 0 && <> and {more} more</>}
        {isDue && next.caution && <span class="beware">{next.caution}</span>}
      </p>
      <button type="button" onClick={onOpen}>
        Go to the brew day
      </button>
      <p class="unseen" aria-live="polite">
        {isDue ? `Now: ${next.what}` : ""}
      </p>
    </aside>
  );
}
