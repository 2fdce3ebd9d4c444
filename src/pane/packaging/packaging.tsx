import { useState } from "preact/hooks";
import { packagingChanges, packagingIn, type PackagingInput } from "../../workbook/brewing/companion/packaging/packaging-form";
import { packagingFigures } from "../../workbook/brewing/companion/packaging/packaging-figures";
import { packagingSafety } from "../../workbook/brewing/companion/packaging/packaging-safety";
import { onlyCounts, writePackaging } from "../../workbook/brewing/companion/packaging/write-packaging";
import { packagingParts } from "../../workbook/brewing/companion/packaging/packaging-judged";
import { batchIdOf, unitsOf, type BatchSheet } from "../../workbook/batch/read/batch-sheets";
import { dayNumberAt } from "../../workbook/brewing/companion/wall-clock";
import { BatchScreen, type Batch } from "../companion/batch-screen";
import { OutcomeLine } from "../companion/outcome-line";
import { useChange } from "../companion/use-change";
import { PackagingFields } from "./packaging-fields";
import { PackagingAnswer } from "./packaging-answer";
import { PartsAnswer } from "./parts-answer";
import { SafetyWords } from "./safety-words";
import { StepByStep } from "./step-by-step";

export const Packaging = () => (
  <BatchScreen title="Packaging">{(batch) => <PackagingForm key={batchIdOf(batch.sheet)} {...batch} />}</BatchScreen>
);

const firstInput = (sheet: BatchSheet): PackagingInput => {
  const input = packagingIn(sheet);
  return input.packagedOn === "" ? { ...input, packagedOn: Math.floor(dayNumberAt(Date.now())) } : input;
};

/** Bottle or keg: how much sugar or pressure, and whether the glass can take it. */
function PackagingForm({ sheet, reload }: Batch) {
  const [input, setInput] = useState(() => firstInput(sheet));
  const [knowing, setKnowing] = useState(false);
  const { busy, outcome, make, forget } = useChange(reload);
  const change = (part: Partial<PackagingInput>) => {
    setInput((before) => ({ ...before, ...part }));
    setKnowing(false);
    forget();
  };
  const safety = packagingSafety(sheet, input);
  const parts = packagingParts(sheet, input);
  const changes = packagingChanges(sheet, input);
  const counting = changes.length > 0 && onlyCounts(sheet, changes);
  const refused = (safety.level === "refuse" && !counting) || changes.some(({ problem }) => problem !== undefined);
  const mustConfirm = safety.level === "confirm" && !counting;

  return (
    <form
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void make((context) => writePackaging(context, sheet, input, knowing)).then(() => setKnowing(false));
      }}
    >
      {parts && (
        <p class="hint">
          This beer is packaged in parts (“Several packagings” on the sheet). What is asked here goes for each part whose own cell is empty.
        </p>
      )}
      <PackagingFields input={input} sheet={sheet} change={change} />
      <SafetyWords safety={safety} bottles={input.into === "bottles"} />
      {parts ? (
        <PartsAnswer parts={parts} units={unitsOf(sheet)} />
      ) : (
        <PackagingAnswer figures={packagingFigures(sheet, input)} safety={safety} input={input} sheet={sheet} />
      )}
      {mustConfirm && (
        <label class="choice">
          <input type="checkbox" checked={knowing} onChange={(event) => setKnowing(event.currentTarget.checked)} />
          {input.into === "bottles"
            ? "I know that these bottles may burst, and write it all the same"
            : "I know that the keg may take more pressure than planned, and write it all the same"}
        </label>
      )}
      {refused ? (
        <p class="bad">Not written like this: change what is named above first.</p>
      ) : (
        <button type="submit" class="main-action" disabled={busy || changes.length === 0 || (mustConfirm && !knowing)}>
          {busy ? "Writing…" : "Write it to the sheet"}
        </button>
      )}
      {changes.length > 0 && !refused && <p class="hint">Changes {changes.map(({ label }) => label).join(", ")}.</p>}
      <OutcomeLine outcome={outcome}>
        <p class="good">It is in the sheet, in section 8.</p>
      </OutcomeLine>
      <StepByStep into={input.into} units={unitsOf(sheet)} />
    </form>
  );
}
