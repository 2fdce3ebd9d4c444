import { useEffect, useState } from "preact/hooks";
import { hostWords } from "../../workbook/grid/words/host-words";
import { leftBehind, tidyUp } from "../../workbook/grid/write/left-behind";

/** Sheets that a write left behind when it broke off with Excel or the pane, told at the pane's start. Nothing goes without being asked for. */
export function LeftBehind() {
  const [names, setNames] = useState<readonly string[]>([]);
  const [problem, setProblem] = useState<string>();
  const [busy, setBusy] = useState(false);
  const look = async (): Promise<void> => setNames(await Excel.run({ delayForCellEdit: true }, (context) => leftBehind(context)));
  // A workbook that cannot be read just now says so on the screen that needs it.
  useEffect(() => void look().catch(() => undefined), []);

  const carryOut = async (wish: "delete" | "keep"): Promise<void> => {
    setBusy(true);
    setProblem(undefined);
    try {
      await Excel.run({ delayForCellEdit: true }, (context) => tidyUp(context, names, wish));
    } catch (failure) {
      setProblem(hostWords(failure));
    }
    // However it went, what is still there is shown.
    await look().catch(() => undefined);
    setBusy(false);
  };

  if (names.length === 0) return null;
  const one = names.length === 1;
  return (
    <section class="screen left-behind" aria-label="Left behind">
      <p role="status">
        {names.map((name) => `“${name}”`).join(", ")} {one ? "was" : "were"} left behind when writing broke off.{" "}
        {one ? "It is" : "They are"} unfinished: keep {one ? "it" : "them"} only if you have typed something there yourself.
      </p>
      <button type="button" disabled={busy} onClick={() => void carryOut("delete")}>
        {one ? "Delete it" : "Delete them"}
      </button>
      <button type="button" class="quiet" disabled={busy} onClick={() => void carryOut("keep")}>
        {one ? "Keep it" : "Keep them"}
      </button>
      {problem !== undefined && (
        <p class="bad" role="alert">
          {problem}
        </p>
      )}
    </section>
  );
}
