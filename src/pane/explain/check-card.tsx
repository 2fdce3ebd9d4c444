import type { CheckExplanation } from "../../workbook/care/explain/explanation";
import { GoTo } from "../parts/go-to";

const meaning: Readonly<Record<CheckExplanation["state"], string>> = {
  "nothing found": "None of its rules applies. A check sees only what was typed into the cells below.",
  look: "It needs a second look: that is what the first of its rules that applies says.",
  stop: "Wait: by the first of its rules that applies, somebody could get hurt, or the batch be lost.",
};

/** Why a line of the sheet's own checks says what it says: its rule, what to do, and the cells that it speaks of. */
export function CheckCard({ check, onLost }: { readonly check: CheckExplanation; readonly onLost: (message: string) => void }) {
  const { label, rule, state, words, remedy, cells } = check;
  return (
    <article class="call" aria-label={`Check: ${label}`}>
      <h2>
        {label}: {state}
      </h2>
      <p>{meaning[state]}</p>
      {words !== "" && (
        <div class="note">
          <p>
            <strong>{words}</strong>
          </p>
          {remedy !== "" && remedy !== words && <p>What to do: {remedy}</p>}
        </div>
      )}
      {cells.length > 0 && (
        <>
          <p>{state === "nothing found" ? "It looks at" : "The rule is about"}</p>
          <dl class="arguments">
            {cells.map(({ name, label: beside, place, shown }) => (
              <div key={name}>
                <dt>{beside || name}</dt>
                <dd>
                  <span class="value">{shown}</span>
                  <GoTo place={place} onProblem={onLost} />
                </dd>
              </div>
            ))}
          </dl>
        </>
      )}
      {rule !== "" && <p class="hint">Rule {rule}</p>}
    </article>
  );
}
