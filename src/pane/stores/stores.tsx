import { useEffect, useState } from "preact/hooks";
import { CopiedSheets } from "../sheets/copied-sheets";
import { PassedOver } from "../sheets/passed-over";
import { StartStores } from "./start-stores";
import { drawFor, giveBackOf, lookAtStores, writeAlphas, writeList, type BatchAndStores, type StoresState } from "./stores-work";

/** What is on the shelves against what the batches need: draw once, give back, list what to buy. */
export function Stores() {
  const [state, setState] = useState<StoresState>({ kind: "looking" });
  const [busy, setBusy] = useState(false);
  const work = (what: () => Promise<StoresState>) => {
    setBusy(true);
    void what().then((next) => {
      setState(next);
      setBusy(false);
    });
  };
  useEffect(() => work(lookAtStores), []);
  return (
    <section class="screen" aria-labelledby="stores-title">
      <h1 id="stores-title">Stores</h1>
      <p class="lead">What you have, what each batch takes, and what is still to be bought.</p>
      {state.kind === "looking" && <p role="status">Looking at the shelves…</p>}
      {state.kind === "none" && <StartStores onWritten={() => work(lookAtStores)} />}
      {state.kind === "failed" && (
        <button type="button" disabled={busy} onClick={() => work(lookAtStores)}>
          Look again
        </button>
      )}
      {state.kind === "there" && (
        <button type="button" class="main-action" disabled={busy} onClick={() => work(writeList)}>
          {busy ? "Working…" : "Write the shopping list"}
        </button>
      )}
      <div aria-live="polite" class="outcome">
        {state.kind === "failed" && <p class="bad">{state.message}</p>}
        {state.kind === "there" && state.said && <p class="good">{state.said}</p>}
      </div>
      {state.kind === "there" && <CopiedSheets groups={state.copies} onGiven={() => work(lookAtStores)} />}
      {state.kind === "there" && state.batches.length === 0 && <p>No batch sheets yet.</p>}
      {state.kind === "there" && <PassedOver unplugged={state.unplugged} to="draw and buy for it" />}
      {state.kind === "there" && state.batches.map((batch) => <OneBatch key={batch.sheetName} batch={batch} busy={busy} work={work} />)}
    </section>
  );
}

interface OneBatchProps {
  readonly batch: BatchAndStores;
  readonly busy: boolean;
  readonly work: (what: () => Promise<StoresState>) => void;
}

const rounded = (amount: number): number => Math.round(amount * 100) / 100;

function OneBatch({ batch: { sheetName, drawn, isCopied, shortages, refused, hops }, busy, work }: OneBatchProps) {
  const stale = hops.filter(
    ({ onTheDayPercent, inBatchPercent }) => inBatchPercent === undefined || Math.abs(onTheDayPercent - inBatchPercent) >= 0.05,
  );
  return (
    <>
      <h2>{sheetName}</h2>
      {refused && <p>{refused}</p>}
      {isCopied && <p>Say first which sheet is the copy.</p>}
      {shortages.length > 0 && (
        <>
          <p>Short of:</p>
          <ul>
            {shortages.map(({ name, amount, left }) => (
              <li key={name}>
                {name}: {rounded(amount)} needed, {left === undefined ? "not on the shelves" : `${rounded(left)} left`}
              </li>
            ))}
          </ul>
        </>
      )}
      {drawn ? (
        <p>
          Has drawn.{" "}
          <button
            type="button"
            disabled={busy}
            aria-label={`Give back what ${sheetName} drew`}
            onClick={() => work(() => giveBackOf(sheetName))}
          >
            Give it back
          </button>
        </p>
      ) : (
        !refused &&
        !isCopied && (
          <button type="button" disabled={busy} aria-label={`Draw for ${sheetName}`} onClick={() => work(() => drawFor(sheetName))}>
            {shortages.length > 0 ? "Draw what the stores list, short or not" : "Draw from the stores"}
          </button>
        )
      )}
      {!drawn && stale.length > 0 && (
        <>
          <p>
            {stale
              .map(
                ({ hop, onTheDayPercent, inBatchPercent }) =>
                  `${hop}: ${onTheDayPercent.toFixed(1)} % alpha on the brewing day, the sheet has ${inBatchPercent ?? "none"}`,
              )
              .join("; ")}
            .
          </p>
          <button
            type="button"
            disabled={busy}
            aria-label={`Write the aged alpha into ${sheetName}`}
            onClick={() => work(() => writeAlphas(sheetName, stale))}
          >
            Write it into the hop table
          </button>
        </>
      )}
    </>
  );
}
