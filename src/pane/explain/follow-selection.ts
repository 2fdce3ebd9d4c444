import { useEffect, useRef, useState } from "preact/hooks";
import { explainActiveCell } from "../../workbook/care/explain/explain-cell";
import type { CellExplanation } from "../../workbook/care/explain/explanation";
import { hostWords } from "../../workbook/grid/words/host-words";

export interface Followed {
  readonly explanation?: CellExplanation;
  readonly problem?: string;
  readonly isPaused: boolean;
  readonly pause: () => void;
  /** Looks at the selected cell now, and follows from here on. */
  readonly goOn: () => void;
}

/** A moment after the last move, so that running through cells with the arrow keys asks only once. */
const restMs = 150;

/** The explanation of the cell that is selected, as the selection moves and as cells change; can be paused. */
export function useFollowedSelection(): Followed {
  const [explanation, setExplanation] = useState<CellExplanation>();
  const [problem, setProblem] = useState<string>();
  const [isPaused, setPaused] = useState(false);
  // Answers may overtake one another: only the newest question counts.
  const newest = useRef(0);

  const look = async (): Promise<void> => {
    const turn = ++newest.current;
    try {
      const found = await Excel.run({ delayForCellEdit: true }, explainActiveCell);
      if (turn !== newest.current) return;
      setExplanation(found);
      setProblem(undefined);
    } catch (failure) {
      if (turn !== newest.current) return;
      // What is known of the cell before does not belong to this one.
      setExplanation(undefined);
      setProblem(hostWords(failure));
    }
  };

  useEffect(() => {
    if (isPaused) return undefined;
    let rest: ReturnType<typeof setTimeout> | undefined;
    const soon = async (): Promise<void> => {
      clearTimeout(rest);
      rest = setTimeout(() => void look(), restMs);
    };
    const stopListening = listen(soon).catch((failure: unknown) => setProblem(hostWords(failure)));
    void look();
    return () => {
      clearTimeout(rest);
      newest.current += 1;
      void stopListening.then((stop) => stop?.()).catch(() => undefined);
    };
  }, [isPaused]);

  return {
    ...(explanation && { explanation }),
    ...(problem !== undefined && { problem }),
    isPaused,
    pause: () => setPaused(true),
    goOn: () => setPaused(false),
  };
}

/** Tells of moves of the selection, of sheets that come to the front, of changed cells and new results; gives back how to end it. */
async function listen(told: () => Promise<void>): Promise<() => Promise<void>> {
  // Somebody may be typing when the screen opens.
  return Excel.run({ delayForCellEdit: true }, async (context) => {
    const { worksheets } = context.workbook;
    const handlers = [
      context.workbook.onSelectionChanged.add(told),
      worksheets.onActivated.add(told),
      worksheets.onChanged.add(told),
      worksheets.onCalculated.add(told),
    ];
    await context.sync();
    return async () => {
      for (const handler of handlers) handler.remove();
      await Promise.all([...new Set(handlers.map((handler) => handler.context))].map((own) => own.sync()));
    };
  });
}
