import { useEffect, useState } from "preact/hooks";
import type { LearnedFigure, LearnedKit } from "../../workbook/sheets/kit/learn-kits";
import type { LearnedKey } from "../../workbook/sheets/kit/kit-rows";
import { PassedOver } from "../sheets/passed-over";
import { learnNow, take, type KitState } from "./kit-work";
import { StartKit } from "./start-kit";

/** The brewer's kits: what their own batches tell of them, to take or to leave. */
export function Kit() {
  const [state, setState] = useState<KitState>({ kind: "looking" });
  const [busy, setBusy] = useState(false);
  const work = async (what: () => Promise<KitState>) => {
    setBusy(true);
    setState(await what());
    setBusy(false);
  };
  useEffect(() => void work(learnNow), []);
  return (
    <section class="screen" aria-labelledby="kit-title">
      <h1 id="kit-title">Kit</h1>
      <p class="lead">
        What your kettle, chiller and bottling really do, learned from your own batches. With few batches a figure stays near the typical
        one.
      </p>
      {state.kind === "looking" && <p role="status">Reading the batches…</p>}
      {state.kind === "none" && <StartKit onWritten={() => void work(learnNow)} />}
      {(state.kind === "there" || state.kind === "failed") && (
        <button type="button" class="main-action" disabled={busy} onClick={() => void work(learnNow)}>
          {busy ? "Reading…" : "Learn from the batches again"}
        </button>
      )}
      <div aria-live="polite" class="outcome">
        {state.kind === "failed" && <p class="bad">{state.message}</p>}
        {state.kind === "there" && (
          <>
            {state.report.kits.length === 0 && <p>No kit on “{state.report.sheetName}” has a name yet: write one beside “1 Kit”.</p>}
            {state.report.kits.map((kit) => (
              <OneKit key={kit.number} kit={kit} busy={busy} onTake={(yes, key) => void work(() => take(yes, kit.number, key))} />
            ))}
            {state.report.unknown.length > 0 && (
              <p>
                Their kit is not on the sheet, so nothing was learned from: {state.report.unknown.map((name) => `“${name}”`).join(", ")}.
              </p>
            )}
            {state.report.copies.length > 0 && (
              <p>
                Copies of one another: {state.report.copies.map((names) => names.map((name) => `“${name}”`).join(" and ")).join("; ")}. What
                their sheets tell alike is learned from once; clear on a copy what was noted of the other batch.
              </p>
            )}
            <PassedOver unplugged={state.report.unplugged} to="learn from it" />
            <p class="hint">
              A figure that you type under “own” on the sheet counts before anything learned. New batches start from the kit; existing
              batches keep theirs.
            </p>
          </>
        )}
      </div>
    </section>
  );
}

interface OneKitProps {
  readonly kit: LearnedKit;
  readonly busy: boolean;
  readonly onTake: (yes: boolean, key: LearnedKey) => void;
}

function OneKit({ kit, busy, onTake }: OneKitProps) {
  return (
    <>
      <h2>
        {kit.name}: {kit.batches} {kit.batches === 1 ? "batch" : "batches"}
      </h2>
      <dl class="learned">
        {kit.figures.map((figure) => (
          <div key={figure.key}>
            <dt>{figure.label}</dt>
            <dd>
              {told(figure)}
              {figure.learned.batches > 0 && figure.key !== "hydrometerOffset" && (
                <button
                  type="button"
                  disabled={busy}
                  aria-label={`${figure.taken ? "Go back to the typical value" : "Use it for new batches"}: ${figure.label}`}
                  onClick={() => onTake(!figure.taken, figure.key)}
                >
                  {figure.taken ? "Go back to typical" : "Use it"}
                </button>
              )}
            </dd>
          </div>
        ))}
      </dl>
    </>
  );
}

/** Digits behind the decimal sign, as the kit sheet shows them; a hydrometer's error wants one more. */
const digits: Partial<Record<LearnedFigure["format"], number>> = { whole: 0, one: 1, two: 2, gravity: 4 };

function told({ format, typical, learned: { value, plusMinus, batches }, unit, taken }: LearnedFigure): string {
  const number = (amount: number) => amount.toFixed(digits[format]);
  if (batches === 0) return `nothing learned yet; typical ${number(typical)} ${unit}`;
  return `${number(value)} ± ${number(plusMinus)} ${unit} from ${batches} ${batches === 1 ? "figure" : "figures"}; typical ${number(typical)}. ${taken ? "New batches use it. " : ""}`;
}
