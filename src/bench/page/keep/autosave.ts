import { keep } from "./storage";
import type { WorkbookState } from "./kept-workbook";

const quietMs = 500;
/** Somebody who goes on typing never leaves that much quiet: then it is written all the same. */
const longestQuiets = 4;

export interface Autosave {
  /** Something changed: it is written once there is half a second of quiet, or four times that after the first change. */
  touch: () => void;
  /** Writes now if anything changed. Resolves when it lies in storage. */
  flush: () => Promise<void>;
}

export interface AutosaveOptions {
  state: () => WorkbookState;
  /** False in a tab that must not write over another tab's work. */
  mayWrite: () => boolean;
  written: (at: Date) => void;
  failed: (problem: unknown) => void;
}

/** Keeps the workbook as you go: half a second after the last change, and when the page is left or hidden. */
export function startAutosave(options: AutosaveOptions): Autosave {
  let changed = false;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let writing: Promise<void> = Promise.resolve();
  let pause = quietMs;
  let waitingSince: number | undefined;

  function touch(): void {
    changed = true;
    clearTimeout(timer);
    waitingSince ??= performance.now();
    const left = waitingSince + longestQuiets * pause - performance.now();
    timer = setTimeout(() => void flush(), Math.max(0, Math.min(pause, left)));
  }

  function flush(): Promise<void> {
    clearTimeout(timer);
    waitingSince = undefined;
    if (!changed || !options.mayWrite()) return writing;
    changed = false;
    const started = performance.now();
    // Storage is asked at once, without waiting: a page that is being left has no time for a later turn.
    const written = keep(options.state());
    // A large workbook takes a while to copy; it is then kept less often.
    pause = Math.max(quietMs, 10 * (performance.now() - started));
    writing = written.then(options.written, (problem: unknown) => {
      changed = true;
      options.failed(problem);
    });
    return writing;
  }

  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "hidden") void flush();
  });
  window.addEventListener("pagehide", () => void flush());
  return { touch, flush };
}
