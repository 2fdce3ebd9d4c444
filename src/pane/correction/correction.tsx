import type { BatchCell } from "../../workbook/batch/fields/cells";
import { useState } from "preact/hooks";
import { bitternessWords } from "../../workbook/brewing/companion/correction/bitterness";
import { corrections, type Correction } from "../../workbook/brewing/companion/correction/corrections";
import { missedPlan, type Missed, type Place } from "../../workbook/brewing/companion/correction/plan-and-measured";
import { writeCorrection } from "../../workbook/brewing/companion/correction/write-correction";
import { corrected } from "../../workbook/brewing/companion/reading/corrected";
import { formLabel } from "../../workbook/batch/derived/form-fields";
import type { Filled } from "../../workbook/batch/contents";
import { unitOf } from "../../workbook/batch/describe/measures";
import { batchFields } from "../../workbook/batch/fields";
import { madeFor } from "../../workbook/batch/read/batch-contents";
import { batchIdOf, type BatchSheet } from "../../workbook/batch/read/batch-sheets";
import { dayNumberAt } from "../../workbook/brewing/companion/wall-clock";
import { gravityWords, shown } from "../../workbook/brewing/companion/words";
import { BatchScreen, type Batch } from "../companion/batch-screen";
import { NumberField, numberIn, textOf } from "../fields/number-field";
import { OutcomeLine } from "../companion/outcome-line";
import { useChange } from "../companion/use-change";
import { ChoiceField } from "../fields/choice-field";

export const TooHighTooLow = () => (
  <BatchScreen title="Too high, too low">{(batch) => <CorrectionForm key={batchIdOf(batch.sheet)} {...batch} />}</BatchScreen>
);

/** Gravity or volume missed the plan: what can be done, with how much. The chosen way becomes a line in the notes. */
function CorrectionForm({ sheet, reload }: Batch) {
  const pitched = sheet.value("og_reached") !== "";
  const [place, setPlace] = useState<Place>(pitched ? "fermenter" : "kettle");
  const noted = notedWort(sheet, pitched);
  const [volume, setVolume] = useState(textOf(noted.volume));
  const [reading, setReading] = useState(textOf(noted.reading));
  const [temperature, setTemperature] = useState(textOf(noted.sample));
  const { busy, outcome, make } = useChange(reload);
  const on = madeFor(sheet);
  const { columns } = batchFields.readings;
  const { ready, problem } = corrected(
    sheet,
    { instrument: "hydrometer", scale: "SG", reading: numberIn(reading), sampleTemperature: numberIn(temperature), originalBrix: "" },
    "wort",
  );
  const cold = numberIn(volume);
  const missed = ready && cold !== "" && cold > 0 ? missedPlan(sheet, place, { volume: cold, gravity: ready.gravity }) : undefined;
  const choose = (correction: Correction) =>
    missed && void make((context) => writeCorrection(context, sheet, missed, correction, dayNumberAt(Date.now())));

  return (
    <>
      <ChoiceField
        legend="Where the wort is"
        name="place"
        value={place}
        choices={[
          ["kettle", "In the kettle"],
          ["fermenter", "In the fermenter"],
        ]}
        onChange={setPlace}
      />
      <NumberField
        id="correction-volume"
        label={`Volume, ${unitOf("volume", on.units)}`}
        value={volume}
        hint={place === "kettle" ? "As it will be cold: boiling wort stands about 4 % higher." : "Measured cold."}
        onInput={setVolume}
      />
      <NumberField id="correction-reading" label={`${formLabel(columns.reading, on)}, SG`} value={reading} onInput={setReading} />
      <NumberField
        id="correction-temperature"
        label={formLabel(columns.sampleTemperature, on)}
        value={temperature}
        hint="Let it cool first: hot samples mislead and crack the glass."
        onInput={setTemperature}
      />
      {problem && (
        <p class="problem" role="status">
          {problem}
        </p>
      )}
      {missed && <Ways sheet={sheet} missed={missed} busy={busy} onChoose={choose} />}
      <OutcomeLine outcome={outcome}>
        <p class="good">It is in the notes of the sheet, in section 9.</p>
      </OutcomeLine>
    </>
  );
}

/** What stands on the sheet already: before the yeast, or before the boil where the sheet has cells for it. */
function notedWort(sheet: BatchSheet, pitched: boolean) {
  const names: Readonly<Record<"volume" | "reading" | "scale" | "sample", BatchCell>> = pitched
    ? { volume: "volume_reached", reading: "og_reading", scale: "og_scale", sample: "og_temperature" }
    : { volume: "before_cold", reading: "before_reading", scale: "before_scale", sample: "before_sample" };
  const number = (name: BatchCell): Filled<number> => sheet.knownNumber(name) ?? "";
  const isSg = sheet.knownText(names.scale) === "SG";
  const volume = number(names.volume);
  return {
    volume: volume === "" ? volume : Number(volume.toFixed(2)),
    reading: isSg ? number(names.reading) : ("" as const),
    sample: number(names.sample),
  };
}

function Ways({
  sheet,
  missed,
  busy,
  onChoose,
}: {
  readonly sheet: BatchSheet;
  readonly missed: Missed;
  readonly busy: boolean;
  readonly onChoose: (correction: Correction) => void;
}) {
  const { measured, planned, units } = missed;
  const ways = corrections(missed);
  const wort = (one: typeof measured) => `${shown(one.volume, "volume", units)} at ${gravityWords(one.gravity)}`;
  return (
    <section aria-label="What can be done">
      <p>
        You have {wort(measured)}; the plan was {wort(planned)}.
      </p>
      {ways.length === 0 && <p class="answer">As planned, as near as one can measure. Nothing to correct.</p>}
      {ways.map((correction) => (
        <article key={correction.title} class="answer">
          <h2>{correction.title}</h2>
          <p>{correction.what}</p>
          <p>
            Gives {wort(correction.result)}. {bitternessWords(sheet, missed, correction)}
          </p>
          {correction.caution && <p class="caution">{correction.caution}</p>}
          <button type="button" disabled={busy} aria-label={`Note this: ${correction.title}`} onClick={() => onChoose(correction)}>
            Note this
          </button>
        </article>
      ))}
    </section>
  );
}
