import { useState } from "preact/hooks";
import { scoresInWorkbook, takeScores, type TakenScores } from "../../workbook/sheets/club/blind-tasting";
import { readScoreLines, type Scores } from "../../workbook/sheets/club/score-line";
import { inWorkbook, type Done } from "../sheets/in-workbook";
import { Outcome } from "../sheets/outcome";

/** Scores back from the score sheets of this workbook, or from what members wrote. */
export function ScoresIn({ sheetName }: { readonly sheetName: string }) {
  const [pasted, setPasted] = useState("");
  const [busy, setBusy] = useState(false);
  const [outcome, setOutcome] = useState<Done<TakenScores>>();
  const take = async (from: (context: Excel.RequestContext) => Promise<readonly Scores[]>, unreadable: readonly string[] = []) => {
    setBusy(true);
    setOutcome(
      await inWorkbook("No score was written.", async (context) => {
        const { taken, left } = await takeScores(context, sheetName, await from(context));
        return { taken, left: [...unreadable.map((line) => `“${line}” is no whole line of scores.`), ...left] };
      }),
    );
    setBusy(false);
  };
  const takePasted = () => {
    const { scores, unreadable } = readScoreLines(pasted);
    void take(() => Promise.resolve(scores), unreadable);
  };
  return (
    <>
      <button type="button" class="main-action" disabled={busy} onClick={() => void take(scoresInWorkbook)}>
        {busy ? "Reading…" : "Read the score sheets of this workbook"}
      </button>
      <div class="field">
        <label for="score-lines">Or paste the lines that members sent</label>
        <textarea id="score-lines" rows={4} value={pasted} spellcheck={false} onInput={(event) => setPasted(event.currentTarget.value)} />
        <button type="button" disabled={busy || pasted.trim() === ""} onClick={takePasted}>
          Take these scores
        </button>
      </div>
      <Outcome outcome={outcome}>
        {({ taken, left }) => (
          <>
            <p>
              {taken.length === 0
                ? `No score was found for “${sheetName}”.`
                : `“${sheetName}” has them now. ${taken.map(({ taster, beers, of }) => `${taster}: ${beers} of ${of} beers`).join(", ")}.`}
            </p>
            {left.length > 0 && (
              <ul>
                {left.map((line, index) => (
                  <li key={index}>{line}</li>
                ))}
              </ul>
            )}
          </>
        )}
      </Outcome>
    </>
  );
}
