import { useCallback, useEffect, useRef, useState } from "preact/hooks";
import { batchCalled, batchInFront, type InFront } from "../../workbook/brewing/companion/batch-in-front";
import { hostWords, isElsewhere } from "../../workbook/grid/words/host-words";

/** What there is to show after a look: while another workbook is in front, Excel may refuse to read, and what was known stays. */
export const afterLook = (before: Front, found: Front): Front =>
  found.kind === "failed" && found.elsewhere === true && before.kind !== "reading" && before.kind !== "failed" ? before : found;

/** The batch that the pane's screens work on, as it stood when it was last read. */
export type Front =
  InFront | { readonly kind: "reading" } | { readonly kind: "failed"; readonly message: string; readonly elsewhere?: boolean };

const quietMs = 250;
const againMs = 30_000;

/**
 * The batch sheet in front; while another kind of sheet is in front, the batch that was there before. It is read anew
 * whenever somebody types, Excel calculates or another sheet comes forward, and now and then besides.
 *
 * @param only a sheet that is read wherever the brewer is
 */
export function useBatchSheet(only?: string): { readonly front: Front; readonly reload: () => Promise<void> } {
  const [front, setFront] = useState<Front>({ kind: "reading" });
  const lastName = useRef<string>();
  const turn = useRef(0);
  const reload = useCallback(async () => {
    const mine = (turn.current += 1);
    const found = await readFront(only, lastName.current);
    if (mine !== turn.current) return; // a later reading is on its way
    if (found.kind === "batch") lastName.current = found.sheet.sheetName;
    setFront((before) => afterLook(before, found));
  }, [only]);
  useEffect(() => {
    let waiting: ReturnType<typeof setTimeout> | undefined;
    const soon = () => {
      clearTimeout(waiting);
      waiting = setTimeout(() => void reload(), quietMs);
    };
    const stopListening = listen(soon);
    const timer = setInterval(soon, againMs);
    void reload();
    return () => {
      turn.current += 1;
      clearTimeout(waiting);
      clearInterval(timer);
      stopListening();
    };
  }, [reload]);
  return { front, reload };
}

async function readFront(only: string | undefined, lastName: string | undefined): Promise<Front> {
  try {
    return await Excel.run({ delayForCellEdit: true }, (context) =>
      only === undefined ? batchInFront(context, lastName) : batchCalled(context, only),
    );
  } catch (problem) {
    return { kind: "failed", message: hostWords(problem), elsewhere: isElsewhere(problem) };
  }
}

/** @returns how to stop */
function listen(changed: () => void): () => void {
  const told = () => {
    changed();
    return Promise.resolve();
  };
  // Somebody may be typing when the screen opens.
  const listening = Excel.run({ delayForCellEdit: true }, async (context) => {
    const { worksheets } = context.workbook;
    const handlers = [worksheets.onActivated.add(told), worksheets.onChanged.add(told), worksheets.onCalculated.add(told)];
    await context.sync();
    return handlers;
  });
  // Where the host has no such events, the reading now and then is what is left.
  listening.catch(() => undefined);
  return () =>
    void listening.then(
      async (handlers) => {
        for (const handler of handlers) handler.remove();
        await handlers[0]?.context.sync();
      },
      () => undefined,
    );
}
