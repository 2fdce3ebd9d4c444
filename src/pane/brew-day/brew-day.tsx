import { useEffect, useMemo, useState } from "preact/hooks";
import { dayLines } from "../../workbook/brewing/companion/brew-day/day-lines";
import { askedByDay, reachedBy, type AskedHere } from "../../workbook/brewing/companion/brew-day/measurements";
import { beginsNow, dayState, doubtfullyEarly } from "../../workbook/brewing/companion/brew-day/day-state";
import type { TimedLine } from "../../workbook/brewing/companion/brew-day/day-lines";
import { markDone, takeBackDone } from "../../workbook/brewing/companion/brew-day/mark-line";
import { isPitching, pitchedWords, pitchingDoubts } from "../../workbook/brewing/companion/brew-day/pitching";
import { formLabel } from "../../workbook/batch/derived/form-fields";
import { batchFields } from "../../workbook/batch/fields";
import { madeFor } from "../../workbook/batch/read/batch-contents";
import { termsIn } from "../../functions/trade-words";
import { batchIdOf } from "../../workbook/batch/read/batch-sheets";
import { timeOfDayAt } from "../../workbook/brewing/companion/wall-clock";
import { BatchScreen, type Batch } from "../companion/batch-screen";
import { NumberField, numberIn } from "../fields/number-field";
import { draftOf, keepDraft } from "./drafts";
import { OutcomeLine } from "../companion/outcome-line";
import { useChange } from "../companion/use-change";
import { useNow } from "../companion/use-now";
import { useOpenScreen } from "../parts/open-screen";
import { AnotherDay } from "./another-day";
import { Coming, Missed } from "./coming";
import { clockTime } from "./countdown";
import { setDayGoing } from "./day-going";
import { DayHeading } from "./day-heading";
import { DueCard } from "./due-card";
import { MeasureForm } from "./measure-form";
import { Running } from "./running";
import { SignalChoiceFields, useSignalChoices } from "./signal-choices";
import { useDueSound } from "./use-due-sound";
import { useWakeLock } from "./use-wake-lock";
import "./brew-day.css";

/** The brew day by the clock. All that it knows stands in the sheet: closing it loses nothing. */
export const BrewDay = () => <BatchScreen title="Brew day">{(batch) => <Day key={batchIdOf(batch.sheet)} {...batch} />}</BatchScreen>;

/** How warm the wort is into which the yeast goes: no cell of its own, but the same figure as the plan's. */
const warmthField = batchFields.yeast.fields.pitchTemperature;

/** The last time that was written here, so that a slip of the thumb can be taken back; it outlives a change of screens. */
let lastWritten: { readonly batch: string; readonly row: number; readonly time: number; readonly noted?: string | undefined } | undefined;

function Day({ sheet, reload }: Batch) {
  const now = useNow();
  const lines = useMemo(() => dayLines(sheet), [sheet]);
  const state = dayState(lines, now);
  const { busy, outcome, make } = useChange(reload);
  const signals = useSignalChoices();
  const [said, setSaid] = useState("");
  const [noted, setNoted] = useState("");
  const going = state?.phase === "going";
  const [warmthTyped, setWarmthTyped] = useState(() => draftOf(batchIdOf(sheet))[warmthField.cell] ?? "");
  const typeWarmth = (text: string) => setWarmthTyped(keepDraft(batchIdOf(sheet), warmthField.cell, text)[warmthField.cell] ?? "");
  const warmth = numberIn(warmthTyped);
  const pitching = going && state.current !== undefined && isPitching(sheet, state.current);
  // The sheet's rules are asked when a figure changes, not with every second of the clock.
  const pitchingSays = useMemo(() => (pitching ? pitchingDoubts(sheet, warmth) : []), [pitching, sheet, warmth]);
  const openScreen = useOpenScreen();
  const batch = batchIdOf(sheet);
  useDueSound(batch, going ? state.lines : [], now, signals.sound);
  useEffect(() => setDayGoing(going ? sheet.sheetName : undefined), [going, sheet.sheetName]);
  const screenStaysOn = useWakeLock(going && state.lines.some(({ isDone }) => isDone));
  if (!state)
    return (
      <p class="lead">
        There is no timetable yet: fill in “Brewed on” and the steps. Checks, at the end of the sheet, tell what is missing.
      </p>
    );

  const { current, missed } = state;
  const asked = going || state.phase === "finished" ? reachedBy(askedByDay(sheet, lines), current?.row ?? lines.length) : [];
  const form = ({ measurement }: AskedHere) => (
    <MeasureForm
      key={measurement.id}
      sheet={sheet}
      measurement={measurement}
      reload={reload}
      onWritten={(what) => {
        setNoted(`${what}: it is in the sheet.`);
        // The form is gone with what it asked for: the keyboard goes on with the day.
        (document.querySelector<HTMLElement>(".due .main-action") ?? document.querySelector<HTMLElement>("h1"))?.focus();
      }}
    >
      {measurement.id === "original" && (
        <p class="hint">
          A refractometer, or a sample drawn before the top-up water?{" "}
          <button type="button" class="link" onClick={() => openScreen("Reading")}>
            Reading
          </button>{" "}
          works it out.
        </p>
      )}
    </MeasureForm>
  );
  const undo = state.lines.find(({ row }) => lastWritten?.batch === batch && lastWritten.row === row && state.lines[row]?.isDone);
  const done = async (line: TimedLine) => {
    const at = Date.now();
    const noted = pitching && line === current && warmth !== "" ? pitchedWords(sheet, warmth) : undefined;
    const result = await make((context) => markDone(context, sheet, line, at, noted));
    if (result.kind !== "written") return;
    if (noted !== undefined) typeWarmth("");
    lastWritten = { batch, row: line.row, time: timeOfDayAt(at), noted };
    setSaid(`${line.what}: ${clockTime(at)} is in the sheet.`);
    setNoted("");
  };
  const takeBack = (line: TimedLine) =>
    void make((context) => takeBackDone(context, sheet, line, lastWritten?.time ?? -1, lastWritten?.noted));
  const dueWords = going && current && now >= current.dueAt ? `Now: ${current.what}` : said;

  return (
    <div class="day" data-next={current?.row ?? state.lines.length}>
      {state.phase === "another day" && <AnotherDay sheet={sheet} state={state} now={now} busy={busy} make={make} />}
      {going && <DayHeading state={state} now={now} screenStaysOn={screenStaysOn} />}
      {going && current && (
        <DueCard
          key={current.row}
          line={current}
          now={now}
          busy={busy}
          isColoured={signals.colour}
          beginsNow={beginsNow(state, now)}
          earlyAt={(instant) => doubtfullyEarly(state, current, instant)}
          doubts={pitchingSays}
          terms={termsIn(current.what).filter((term) => !lines.some(({ row, what }) => row < current.row && term.saidAs?.test(what)))}
          onDone={() => void done(current)}
        >
          {asked.filter(({ row }) => row === current.row).map(form)}
          {pitching && (
            <NumberField
              id="warmth-of-wort"
              label={formLabel(warmthField, madeFor(sheet), "the wort now")}
              value={warmthTyped}
              hint="Measured in the middle, with a sanitised thermometer. Kept among the notes."
              onInput={typeWarmth}
            />
          )}
        </DueCard>
      )}
      {state.phase === "finished" && <p class="finished">The brew day is done. Take the first reading after three days.</p>}
      {state.phase === "over" && (
        <p class="lead">This brew day is over. Missing times can still be typed into the sheet, beside their lines.</p>
      )}
      <OutcomeLine outcome={outcome} />
      <p role="status" class="noted">
        {noted}
      </p>
      {asked.some(({ row }) => row !== current?.row) && (
        <section aria-labelledby="unmeasured-title">
          <h2 id="unmeasured-title">Not noted yet</h2>
          {asked
            .filter(({ row }) => row !== current?.row)
            .map((one) => (
              <details key={one.measurement.id}>
                <summary>{one.measurement.title}</summary>
                {form(one)}
              </details>
            ))}
        </section>
      )}
      {going && <Running timer={state.running} now={now} />}
      {going && <Coming title="Then" lines={state.coming} now={now} />}
      <Missed lines={missed} busy={busy} {...(going && { onDone: (line: TimedLine) => void done(line) })} />
      {undo && (
        <button type="button" class="big" disabled={busy} onClick={() => takeBack(undo)}>
          Undo: {undo.what}, {clockTime(undo.doneAt ?? now)}
        </button>
      )}
      {(going || state.phase === "another day") && <SignalChoiceFields {...signals} isLive={going} />}
      <p class="unseen" aria-live="polite">
        {dueWords}
      </p>
    </div>
  );
}
