import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import type { UnitSystem } from "../../functions/quantities";
import { firstUnits, rememberUnits } from "../parts/first-units";
import { ChoiceField } from "../fields/choice-field";
import type { Done } from "./in-workbook";
import { Outcome } from "./outcome";

export interface StartSheetProps {
  /** Its name in the workbook, unless a sheet is called so already. */
  readonly sheetName: string;
  /** "the season sheet" */
  readonly what: string;
  readonly unitsLegend: string;
  readonly unitChoices: readonly (readonly [UnitSystem, string])[];
  readonly write: (sheetName: string, units: UnitSystem) => Promise<Done<unknown>>;
  readonly onWritten: () => void;
  /** What is asked before the units. */
  readonly before?: ComponentChildren;
  readonly hint?: string;
}

/** Asks for the units and writes a sheet that the workbook has once: the season, the kits, the stores. */
export function StartSheet({ sheetName, what, unitsLegend, unitChoices, write, onWritten, before, hint }: StartSheetProps) {
  const [units, setUnits] = useState(firstUnits);
  const [busy, setBusy] = useState(false);
  const [outcome, setOutcome] = useState<Done<unknown>>();
  const writeAs = async (name: string) => {
    setBusy(true);
    const result = await write(name, units);
    setBusy(false);
    setOutcome(result);
    if (result.kind !== "done") return;
    rememberUnits(units);
    onWritten();
  };
  return (
    <>
      {before}
      <ChoiceField legend={unitsLegend} name={`${sheetName.toLowerCase()}-units`} value={units} choices={unitChoices} onChange={setUnits} />
      {hint && <p class="hint">{hint}</p>}
      <button type="button" class="main-action" disabled={busy} onClick={() => void writeAs(sheetName)}>
        {busy ? "Writing…" : `Write ${what}`}
      </button>
      <Outcome outcome={outcome} onFreeName={(free) => void writeAs(free)}>
        {() => null}
      </Outcome>
    </>
  );
}
