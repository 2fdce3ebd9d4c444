import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import type { Scale } from "../../workbook/batch/contents";
import { formLabel } from "../../workbook/batch/derived/form-fields";
import { called, forSheet, noteOf, type NumberField as Described } from "../../workbook/batch/describe/field";
import { madeFor } from "../../workbook/batch/read/batch-contents";
import { batchIdOf } from "../../workbook/batch/read/batch-sheets";
import { judgeMeasured, writeMeasured } from "../../workbook/brewing/companion/brew-day/judge-measured";
import { isEmptyOn, type Measurement } from "../../workbook/brewing/companion/brew-day/measurements";
import { gravityWords } from "../../workbook/brewing/companion/words";
import type { NamedCells } from "../../workbook/grid/read/named-cells";
import { Doubts } from "../companion/doubts";
import { NumberField, numberIn } from "../fields/number-field";
import { OutcomeLine } from "../companion/outcome-line";
import { useChange } from "../companion/use-change";
import { ScaleField } from "../fields/scale-field";
import { draftOf, dropDraft, keepDraft } from "./drafts";

interface MeasureFormProps {
  readonly sheet: NamedCells;
  readonly measurement: Measurement;
  readonly reload: () => Promise<void>;
  /** With words for what was written. */
  readonly onWritten: (what: string) => void;
  /** Below it: where else it can be done. */
  readonly children?: ComponentChildren;
}

/** What a step asks for is typed where it is asked: corrected, questioned where it can hardly be, and only then written. */
export function MeasureForm({ sheet, measurement, reload, onWritten, children }: MeasureFormProps) {
  const batch = batchIdOf(sheet);
  const [draft, setDraft] = useState(() => draftOf(batch));
  const [asked, setAsked] = useState(false);
  const { busy, outcome, make, forget } = useChange(reload);
  const on = madeFor(sheet);
  const scaleCell = measurement.parts.find(({ scale }) => scale !== undefined)?.scale?.cell ?? "";
  const scale: Scale = (draft[scaleCell] ?? (sheet.has(scaleCell) ? sheet.text(scaleCell) : "")) === "P" ? "P" : "SG";
  const change = (cell: string, text: string) => {
    setDraft(keepDraft(batch, cell, text));
    setAsked(false);
    forget();
  };
  const figures = Object.fromEntries(Object.entries(draft).map(([cell, text]) => [cell, numberIn(text)]));
  const judged = judgeMeasured(sheet, measurement, { figures, scale });
  // A slip such as "2o" is answered beside its field; what is complete without it waits for it all the same.
  const unread = measurement.parts
    .flatMap(({ main, beside }) => [main.cell ?? "", beside?.cell ?? ""])
    .some((cell) => (draft[cell] ?? "").trim() !== "" && figures[cell] === "");
  const complete = judged.problem === "" && judged.changes.length > 0 && !unread;
  const doubted = asked && judged.doubts.length > 0;

  const write = async () => {
    if (judged.doubts.length > 0 && !asked) return setAsked(true);
    const result = await make((context) => writeMeasured(context, sheet, judged));
    if (result.kind !== "written") return;
    dropDraft(
      batch,
      judged.changes.map(({ name }) => name),
    );
    onWritten(judged.gravity === undefined ? measurement.title : `${measurement.title}, gravity ${gravityWords(judged.gravity)}`);
  };
  const field = (described: Described, name: string) => {
    const cell = described.cell ?? "";
    return (
      <NumberField
        key={cell}
        id={`measure-${cell}`}
        label={formLabel(described, on, name)}
        value={draft[cell] ?? ""}
        hint={noteOf(described, on)}
        onInput={(text) => change(cell, text)}
      />
    );
  };
  return (
    <form
      class="measure"
      aria-label={measurement.title}
      noValidate
      onKeyDown={({ key: pressed }) => pressed === "Escape" && setAsked(false)}
      onSubmit={(event) => {
        event.preventDefault();
        if (complete) void write();
      }}
    >
      {measurement.parts.map((part) => (
        <div key={part.main.cell}>
          {field(part.main, forSheet(part.main.label, on))}
          {part.scale && <ScaleField name={`measure-${part.scale.cell}`} value={scale} onChange={(wanted) => change(scaleCell, wanted)} />}
          {part.beside && isEmptyOn(sheet, part.beside) && field(part.beside, called(part.beside))}
        </div>
      ))}
      {judged.gravity !== undefined && (
        <p class="corrected">
          Gravity <strong>{gravityWords(judged.gravity)}</strong>, corrected for the sample's temperature
        </p>
      )}
      {judged.problem !== "" && (
        <p class="problem" role="status">
          {judged.problem}
        </p>
      )}
      {doubted && <Doubts doubts={judged.doubts} />}
      <button type="submit" class="big" disabled={busy || !complete}>
        {busy ? "Writing…" : doubted ? "Write it all the same" : "Write it to the sheet"}
      </button>
      <OutcomeLine outcome={outcome} />
      {children}
    </form>
  );
}
