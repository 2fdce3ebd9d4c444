import { useState } from "preact/hooks";
import type { Repair } from "../../workbook/care/check/finding";
import { repair, type Repaired } from "./repair-work";

export interface RepairFormProps {
  readonly repairs: readonly Repair[];
  /** Cells were written: what was found before holds no longer. */
  readonly onWritten: (outcome: Repaired) => void;
}

const key = ({ sheet, address }: Repair): string => `${sheet}!${address}`;

/** Which formulas to enter anew. Those at #NAME? are ticked; what somebody typed over a formula is not, until they tick it. */
export function RepairForm({ repairs, onWritten }: RepairFormProps) {
  const stuck = repairs.filter(({ kind }) => kind === "stuck");
  const overwritten = repairs.filter(({ kind }) => kind === "overwritten");
  const [ticked, setTicked] = useState<ReadonlySet<string>>(new Set(stuck.map(key)));
  const [refusal, setRefusal] = useState<string>();
  const [isBusy, setBusy] = useState(false);
  const chosen = repairs.filter((one) => ticked.has(key(one)));

  const tick = (some: readonly Repair[], isOn: boolean): void => {
    const next = new Set(ticked);
    for (const one of some)
      if (isOn) next.add(key(one));
      else next.delete(key(one));
    setTicked(next);
  };

  const repairChosen = async (): Promise<void> => {
    setBusy(true);
    setRefusal(undefined);
    const outcome = await repair(chosen);
    if (outcome.isWritten) onWritten(outcome);
    else setRefusal(outcome.words);
    setBusy(false);
  };

  return (
    <fieldset class="field repair">
      <legend>Repair formulas</legend>
      {stuck.length > 0 && (
        <label class="choice">
          <input
            type="checkbox"
            checked={stuck.every((one) => ticked.has(key(one)))}
            onChange={(event) => tick(stuck, event.currentTarget.checked)}
          />
          {stuck.length === 1 ? "One formula" : `${String(stuck.length)} formulas`} at #NAME?: enter again
        </label>
      )}
      {overwritten.map((one) => (
        <label key={key(one)} class="choice">
          <input type="checkbox" checked={ticked.has(key(one))} onChange={(event) => tick([one], event.currentTarget.checked)} />
          <span>
            {one.address} on “{one.sheet}”: {one.was === "" ? "put the formula back" : `put the formula in place of ${String(one.was)}`}
          </span>
        </label>
      ))}
      <button type="button" disabled={isBusy || chosen.length === 0} onClick={() => void repairChosen()}>
        {isBusy ? "Repairing…" : `Repair ${String(chosen.length)} ${chosen.length === 1 ? "cell" : "cells"}`}
      </button>
      <div aria-live="polite">{refusal !== undefined && <p class="bad">{refusal}</p>}</div>
    </fieldset>
  );
}
