import { useState } from "preact/hooks";
import type { CellExplanation } from "../../workbook/care/explain/explanation";
import { CallCard } from "./call-card";
import { CheckCard } from "./check-card";
import { useFollowedSelection } from "./follow-selection";
import { ProblemNote } from "./problem-note";

/** Explains whatever cell is selected, function by function. */
export function ExplainScreen() {
  const { explanation, problem, isPaused, pause, goOn } = useFollowedSelection();
  const [lost, setLost] = useState<string>();
  return (
    <section class="screen explain" aria-labelledby="explain-title">
      <h1 id="explain-title">Explain this cell</h1>
      <div class="row-of-buttons">
        <p class="hint">{isPaused ? "Stays with this cell." : "Follows the cell you select."}</p>
        <button type="button" aria-pressed={isPaused} onClick={isPaused ? goOn : pause}>
          {isPaused ? "Follow again" : "Stay here"}
        </button>
      </div>
      {problem !== undefined && (
        <p class="bad" role="alert">
          The cell could not be read. {problem}
        </p>
      )}
      {lost !== undefined && (
        <p class="bad" role="alert">
          {lost}
        </p>
      )}
      {explanation && <Explained explanation={explanation} onLost={setLost} />}
    </section>
  );
}

const plainWords: Readonly<Record<Exclude<CellExplanation["kind"], "gyle">, string>> = {
  empty: "This cell is empty. Select a cell that calculates, or put a function into this one from the screen Functions.",
  constant: "This was typed in; nothing calculates here.",
  native: "This is a formula of the spreadsheet itself, without a GYLE function.",
};

function Explained({ explanation, onLost }: { readonly explanation: CellExplanation; readonly onLost: (message: string) => void }) {
  const { sheet, address, names, kind, shown, written, spilledFrom, calls, problem, check } = explanation;
  return (
    <>
      <div role="status">
        <h2 class="cell-heading">
          {address}
          {names.length > 0 && <span> {names.join(", ")}</span>}
        </h2>
        <p class="cell-shows">{shown === "" ? "shows nothing" : shown}</p>
        <p class="hint">
          on “{sheet}”{spilledFrom !== undefined && <>; filled by the formula in {spilledFrom}</>}
        </p>
      </div>
      {check && <CheckCard check={check} onLost={onLost} />}
      {written !== "" && (
        <p class="formula">
          <code>{written}</code>
        </p>
      )}
      {problem && <ProblemNote problem={problem} isError onLost={onLost} />}
      {kind !== "gyle" && !check && <p>{plainWords[kind]}</p>}
      {calls.map((call, index) => (
        <CallCard key={`${address}${String(index)}${call.text}`} call={call} isOnly={calls.length === 1} onLost={onLost} />
      ))}
    </>
  );
}
