import { useEffect, useState } from "preact/hooks";
import { CopiedSheets } from "../sheets/copied-sheets";
import { PassedOver } from "../sheets/passed-over";
import { StartStores } from "./start-stores";
import {
  drawFor,
  giveBackOf,
  lookAtStores,
  renew,
  writeAlphas,
  writeList,
  type BatchAndStores,
  type ChosenOnSheets,
  type StoresState,
} from "./stores-work";

/** What is on the shelves against what the batches need: draw once, give back, list what to buy. */
export function Stores() {
  const [state, setState] = useState<StoresState>({ kind: "looking" });
  const [busy, setBusy] = useState(false);
  const [chosen, setChosen] = useState<ChosenOnSheets>(new Map());
  const work = (what: () => Promise<StoresState>) => {
    setBusy(true);
    void what().then((next) => {
      setState(next);
      setBusy(false);
    });
  };
  const look = () => work(() => lookAtStores(chosen));
  const choose = (sheetName: string, thing: string, lot: string) => {
    const lots = new Map(chosen.get(sheetName));
    if (lot === "") lots.delete(thing);
    else lots.set(thing, lot);
    const next = new Map(chosen).set(sheetName, lots);
    setChosen(next);
    work(() => lookAtStores(next));
  };
  useEffect(look, []);
  return (
    <section class="screen" aria-labelledby="stores-title">
      <h1 id="stores-title">Stores</h1>
      <p class="lead">What you have, what each batch takes, and what is still to be bought.</p>
      {state.kind === "looking" && <p role="status">Looking at the shelves…</p>}
      {state.kind === "none" && <StartStores onWritten={look} />}
      {state.kind === "failed" && (
        <button type="button" disabled={busy} onClick={look}>
          Look again
        </button>
      )}
      {state.kind === "there" && state.isOlder && (
        <>
          <p>
            “{state.sheetName}” was made by an older Gylebook, which knew no lots. What stands on it can be written on a new sheet; the
            older one stays as it is.
          </p>
          <button type="button" class="main-action" disabled={busy} onClick={() => work(renew)}>
            {busy ? "Working…" : "Write it in today's layout"}
          </button>
        </>
      )}
      {state.kind === "there" && !state.isOlder && (
        <button type="button" class="main-action" disabled={busy} onClick={() => work(writeList)}>
          {busy ? "Working…" : "Write the shopping list"}
        </button>
      )}
      <div aria-live="polite" class="outcome">
        {state.kind === "failed" && <p class="bad">{state.message}</p>}
        {state.kind === "there" && state.said && <p class="good">{state.said}</p>}
      </div>
      {state.kind === "there" && <CopiedSheets groups={state.copies} onGiven={look} />}
      {state.kind === "there" && !state.isOlder && state.batches.length === 0 && <p>No batch sheets yet.</p>}
      {state.kind === "there" && state.homeless.length > 0 && (
        <p class="bad">
          Drawn, but on no line of the shelves any more: {state.homeless.join("; ")}. Was it renamed? Give its line the former name and lot
          again, so that what is left is right.
        </p>
      )}
      {state.kind === "there" && <PassedOver unplugged={state.unplugged} to="draw and buy for it" />}
      {state.kind === "there" &&
        state.batches
          .filter((batch) => !isSettled(batch))
          .map((batch) => <OneBatch key={batch.sheetName} batch={batch} busy={busy} work={work} chosen={chosen} choose={choose} />)}
      {state.kind === "there" && state.batches.some(isSettled) && (
        <Settled
          batches={state.batches.filter(isSettled)}
          busy={busy}
          onPutBack={(sheetName) => work(() => giveBackOf(sheetName, chosen))}
        />
      )}
    </section>
  );
}

/** It has drawn, and there is nothing to say about it. */
const isSettled = ({ drawn, refused, isCopied, shortages }: BatchAndStores): boolean =>
  drawn && !refused && !isCopied && shortages.length === 0;

interface SettledProps {
  readonly batches: readonly BatchAndStores[];
  readonly busy: boolean;
  readonly onPutBack: (sheetName: string) => void;
}

/** Out of the way of the batches that still have to draw: a season has dozens. */
const Settled = ({ batches, busy, onPutBack }: SettledProps) => (
  <details>
    <summary>
      Drawn already: {batches.length} {batches.length === 1 ? "batch" : "batches"}
    </summary>
    <ul class="settled">
      {batches.map(({ sheetName }) => (
        <li key={sheetName}>
          <span>{sheetName}</span>
          <button type="button" disabled={busy} aria-label={`Put back what ${sheetName} drew`} onClick={() => onPutBack(sheetName)}>
            Put back
          </button>
        </li>
      ))}
    </ul>
  </details>
);

interface OneBatchProps {
  readonly batch: BatchAndStores;
  readonly busy: boolean;
  readonly work: (what: () => Promise<StoresState>) => void;
  readonly chosen: ChosenOnSheets;
  readonly choose: (sheetName: string, thing: string, lot: string) => void;
}

const rounded = (amount: number): number => Math.round(amount * 100) / 100;

/* What is seen on a button is part of what is heard, or nobody can say it to a computer that listens. */
const drawAll = "Draw from the stores";
const drawShort = "Draw what there is";

function OneBatch({ batch, busy, work, chosen, choose }: OneBatchProps) {
  const { sheetName, drawn, isCopied, shortages, lots, refused, hops } = batch;
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
            {shortages.map(({ name, amount, left, unit }) => (
              <li key={name}>
                {name}: {rounded(amount)} {unit} needed,{" "}
                {left === undefined ? "not on the shelves" : `${rounded(Math.max(0, left))} ${unit} left`}
              </li>
            ))}
          </ul>
        </>
      )}
      {lots.map(({ key, name, lots: choices, chosen: lot }) => {
        const id = `lot-of-${sheetName}-${key}`.replaceAll(/\s/g, "-");
        return (
          <div key={key} class="field">
            <label for={id}>
              {name} for {sheetName}: draw first
            </label>
            <select id={id} value={lot ?? ""} disabled={busy} onChange={({ currentTarget }) => choose(sheetName, key, currentTarget.value)}>
              <option value="">the oldest lot</option>
              {choices.map(([value, words]) => (
                <option key={value} value={value}>
                  {words}
                </option>
              ))}
            </select>
          </div>
        );
      })}
      {drawn ? (
        <p>
          Drawn from the stores.{" "}
          <button
            type="button"
            disabled={busy}
            aria-label={`Put back what ${sheetName} drew`}
            onClick={() => work(() => giveBackOf(sheetName, chosen))}
          >
            Put it back
          </button>
        </p>
      ) : (
        !refused &&
        !isCopied && (
          <button
            type="button"
            disabled={busy}
            aria-label={`${shortages.length > 0 ? drawShort : drawAll}: ${sheetName}`}
            onClick={() => work(() => drawFor(sheetName, chosen))}
          >
            {shortages.length > 0 ? drawShort : drawAll}
          </button>
        )
      )}
      {!drawn && stale.length > 0 && (
        <>
          <p>
            {stale
              .map(
                ({ hop, from, onTheDayPercent, inBatchPercent }) =>
                  `${hop}${from === "" ? "" : ` (${from})`}: ${onTheDayPercent.toFixed(1)} % alpha on the brewing day, the sheet has ${inBatchPercent ?? "none"}`,
              )
              .join("; ")}
            .
          </p>
          <button
            type="button"
            disabled={busy}
            aria-label={`Write it into the hop table of ${sheetName}`}
            onClick={() => work(() => writeAlphas(sheetName, stale))}
          >
            Write it into the hop table
          </button>
        </>
      )}
    </>
  );
}
