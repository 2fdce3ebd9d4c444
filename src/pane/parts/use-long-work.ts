import { useEffect, useRef, useState } from "preact/hooks";
import type { LongWork, Progress } from "../../workbook/grid/write/progress";

export interface RunningWork {
  /** Undefined while nothing runs. */
  readonly progress: Progress | "starting" | undefined;
  /** Starts the work, and gives its result; one at a time. */
  readonly run: <T>(work: (longWork: LongWork) => Promise<T>) => Promise<T>;
  readonly stop: () => void;
}

/** Runs long work for a screen: how far it is, and a way to stop it. Leaving the screen stops it as well. */
export function useLongWork(): RunningWork {
  const [progress, setProgress] = useState<RunningWork["progress"]>();
  const controller = useRef<AbortController>();
  useEffect(() => () => controller.current?.abort(), []);
  return {
    progress,
    stop: () => controller.current?.abort(),
    run: async (work) => {
      const own = new AbortController();
      controller.current = own;
      setProgress("starting");
      try {
        return await work({ signal: own.signal, onProgress: setProgress });
      } finally {
        setProgress(undefined);
      }
    },
  };
}
