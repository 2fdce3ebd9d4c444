import { useEffect, useState } from "preact/hooks";

/** Keeps the screen on while a brew day runs, where the browser can; true while it does. */
export function useWakeLock(wanted: boolean): boolean {
  const [held, setHeld] = useState(false);
  useEffect(() => {
    if (!wanted || !("wakeLock" in navigator)) return undefined;
    let lock: WakeLockSentinel | undefined;
    let left = false;
    const ask = async () => {
      if (document.visibilityState !== "visible") return;
      try {
        lock = await navigator.wakeLock.request("screen");
        if (left) return void lock.release();
        setHeld(true);
        lock.addEventListener("release", () => setHeld(false));
      } catch {
        setHeld(false); // not allowed here, or the battery is low: the day goes on without
      }
    };
    void ask();
    // The browser takes it back when the page is hidden.
    const askAgain = () => void ask();
    document.addEventListener("visibilitychange", askAgain);
    return () => {
      left = true;
      document.removeEventListener("visibilitychange", askAgain);
      void lock?.release();
    };
  }, [wanted]);
  return held;
}
