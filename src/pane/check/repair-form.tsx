import { useState } from "preact/hooks";
import type { Repair } from "../../workbook/care/check/finding";
import { HalfChanged } from "../../workbook/brewing/companion/outcome";
import { hostWords } from "../../workbook/grid/words/host-words";
import { repairFormulas, RepairRefused, type RepairReport } from "../../workbook/care/check/repair";

/** What became of the cells, in words. */
export interface Repaired {
  readonly isGood: boolean;
  readonly words: string;
}

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
  const chosen = repairs.filter((repair) => ticked.has(key(repair)));

  const tick = (some: readonly Repair[], isOn: boolean): void => {
    const next = new Set(ticked);
    for (const repair of some)
      if (isOn) next.add(key(repair));
      else next.delete(key(repair));
    setTicked(next);
  };

  const repair = async (): Promise<void> => {
    setBusy(true);
    setRefusal(undefined);
    try {
      onWritten({
        isGood: true,
        words: reported(await Excel.run({ delayForCellEdit: true }, (context) => repairFormulas(context, chosen))),
      });
    } catch (failure) {
      if (failure instanceof HalfChanged) onWritten({ isGood: false, words: failure.message });
      else
        setRefusal(
          failure instanceof RepairRefused
            ? failure.message
            : `Nothing was repaired, and the cells are as they were. ${hostWords(failure)}`,
        );
    }
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
      <button type="button" disabled={isBusy || chosen.length === 0} onClick={() => void repair()}>
        {isBusy ? "Repairing…" : `Repair ${String(chosen.length)} ${chosen.length === 1 ? "cell" : "cells"}`}
      </button>
      <div aria-live="polite">{refusal !== undefined && <p class="bad">{refusal}</p>}</div>
    </fieldset>
  );
}

function reported({ written, still }: RepairReport): string {
  const done = `${String(written)} ${written === 1 ? "formula was" : "formulas were"} entered anew.`;
  if (!still) return `${done} Whether any still shows #NAME? could not be seen at once: the workbook is looked through again.`;
  if (still.length === 0) return `${done} None shows #NAME? any more.`;
  return `${done} ${String(still.length)} still ${still.length === 1 ? "shows" : "show"} #NAME? (${still
    .slice(0, 3)
    .map(({ address, sheet }) => `${address} on “${sheet}”`)
    .join(", ")}): Excel has not loaded the functions yet. Close and open the workbook, wait a moment, then repair again.`;
}
