import type { ComponentChildren } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import type { Scale } from "../../workbook/batch/contents";
import { called, forSheet, type NumberField as Described, type On } from "../../workbook/batch/describe/field";
import { unitOf } from "../../workbook/batch/describe/measures";
import { methodOf } from "../../workbook/batch/read/batch-contents";
import { batchIdOf, unitsOf } from "../../workbook/batch/read/batch-sheets";
import { judgeMeasured, writeMeasured } from "../../workbook/brewing/companion/brew-day/judge-measured";
import { isEmptyOn, type Measurement } from "../../workbook/brewing/companion/brew-day/measurements";
import { gravityWords } from "../../workbook/brewing/companion/words";
import type { NamedCells } from "../../workbook/grid/read/named-cells";
import { Doubts } from "../companion/doubts";
import { NumberField, numberIn } from "../fields/number-field";
import { OutcomeLine } from "../companion/outcome-line";
import { useChange } from "../companion/use-change";
import { ChoiceField } from "../fields/choice-field";

interface Draft {
  readonly figures: Readonly<Record<string, string>>;
  readonly scale?: Scale;
}

/** What was typed and not written yet; it outlives the line, a look at another screen, and a write that fails. */
const drafts = new Map<string, Draft>();

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
  const key = `${batchIdOf(sheet)} ${measurement.id}`;
  const [draft, setDraft] = useState<Draft>(() => drafts.get(key) ?? { figures: {} });
  const [asked, setAsked] = useState(false);
  const { busy, outcome, make, forget } = useChange(reload);
  const isShown = useRef(true);
  useEffect(() => () => void (isShown.current = false), []);
  const on: On = { units: unitsOf(sheet), method: methodOf(sheet) };
  const scaleCell = measurement.parts.find(({ scale }) => scale !== undefined)?.scale?.cell;
  const scale: Scale = draft.scale ?? (scaleCell !== undefined && sheet.text(scaleCell) === "P" ? "P" : "SG");
  const change = (next: Draft) => {
    drafts.set(key, next);
    setDraft(next);
    setAsked(false);
    forget();
  };
  const figures = Object.fromEntries(Object.entries(draft.figures).map(([cell, text]) => [cell, numberIn(text)]));
  const judged = judgeMeasured(sheet, measurement, { figures, scale });
  const complete = judged.problem === "" && judged.changes.length > 0;
  const doubted = asked && judged.doubts.length > 0;

  const write = async () => {
    if (judged.doubts.length > 0 && !asked) return setAsked(true);
    const result = await make((context) => writeMeasured(context, sheet, judged));
    if (result.kind !== "written") return;
    drafts.delete(key);
    if (isShown.current) setDraft({ figures: {} });
    onWritten(judged.gravity === undefined ? measurement.title : `${measurement.title}, gravity ${gravityWords(judged.gravity)}`);
  };
  const field = (described: Described, name: string) => {
    const cell = described.cell ?? "";
    return (
      <NumberField
        key={cell}
        id={`measure-${cell}`}
        label={withUnit(name, described, on)}
        value={draft.figures[cell] ?? ""}
        {...(typeof described.note === "string" && { hint: described.note })}
        onInput={(text) => change({ ...draft, figures: { ...draft.figures, [cell]: text } })}
      />
    );
  };
  return (
    <form
      class="measure"
      aria-label={measurement.title}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        if (complete) void write();
      }}
    >
      {measurement.parts.map((part) => (
        <div key={part.main.cell}>
          {field(part.main, forSheet(part.main.label, on))}
          {part.scale && (
            <ChoiceField
              legend="Scale"
              name={`measure-${part.scale.cell}`}
              value={scale}
              choices={[
                ["SG", "SG, such as 1.048"],
                ["P", "°P, such as 12"],
              ]}
              onChange={(wanted) => change({ ...draft, scale: wanted })}
            />
          )}
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

/** "Volume in the fermenter, L": the unit in which it is to be typed. */
function withUnit(name: string, { measure }: Described, { units }: On): string {
  const unit = unitOf(measure, units);
  return `${name.charAt(0).toUpperCase()}${name.slice(1)}${unit === "" ? "" : `, ${unit}`}`;
}
