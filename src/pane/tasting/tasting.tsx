import { useState } from "preact/hooks";
import { tastingIn, writeTasting, type TastingInput } from "../../workbook/brewing/companion/tasting/tasting-form";
import { scoreLimits, tastedLines, tastingFields } from "../../workbook/batch/fields/tasting";
import { batchIdOf, type BatchSheet } from "../../workbook/batch/read/batch-sheets";
import { dayNumberAt } from "../../workbook/brewing/companion/wall-clock";
import { BatchScreen, type Batch } from "../companion/batch-screen";
import { dayField, fieldMoment } from "../fields/moments";
import { OutcomeLine } from "../companion/outcome-line";
import { useChange } from "../companion/use-change";
import { TextField } from "../fields/text-field";
import { TastedLine } from "./tasted-line";

export const Tasting = () => (
  <BatchScreen title="Tasting">{(batch) => <TastingForm key={batchIdOf(batch.sheet)} {...batch} />}</BatchScreen>
);

const firstInput = (sheet: BatchSheet): TastingInput => {
  const input = tastingIn(sheet);
  return input.tastedOn === "" ? { ...input, tastedOn: Math.floor(dayNumberAt(Date.now())) } : input;
};

/** What it was like, so that the next one can be better. */
function TastingForm({ sheet, reload }: Batch) {
  const [input, setInput] = useState(() => firstInput(sheet));
  const { busy, outcome, make, forget } = useChange(reload);
  const change = (part: Partial<TastingInput>) => {
    setInput((before) => ({ ...before, ...part }));
    forget();
  };
  const line = (index: number, part: Partial<TastingInput["lines"][number]>) =>
    change({ lines: input.lines.map((one, at) => (at === index ? { ...one, ...part } : one)) });
  const write = async () => {
    const result = await make((context) => writeTasting(context, sheet, input));
    if (result.kind === "written") setInput((before) => ({ ...before, note: "" }));
  };
  return (
    <form
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void write();
      }}
    >
      <p class="hint">
        Score each from 1, for the drain, to 5, a beer that you would pour for anybody; a few words go below it. Open the first bottle over
        a sink.
      </p>
      <TextField
        id="tasted-on"
        type="date"
        label={tastingFields.tastedOn.label}
        value={dayField(input.tastedOn)}
        onInput={(text) => change({ tastedOn: fieldMoment(text) })}
      />
      {tastedLines.map(({ label }, index) => (
        <TastedLine
          key={label}
          index={index}
          what={label}
          scores={scoreLimits}
          score={input.lines[index]?.score ?? ""}
          words={input.lines[index]?.words ?? ""}
          onChange={(part) => line(index, part)}
        />
      ))}
      <TextField
        id="note"
        label="Note to add"
        value={input.note}
        hint="Goes below the notes already on the sheet. A note that begins with “private” is left out when the batch is shared."
        onInput={(note) => change({ note })}
      />
      <button type="submit" class="main-action" disabled={busy}>
        {busy ? "Writing…" : "Write the tasting"}
      </button>
      <OutcomeLine outcome={outcome}>
        <p class="good">It is in the sheet, in section 9.</p>
      </OutcomeLine>
    </form>
  );
}
