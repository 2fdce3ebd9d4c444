import { recall, remember } from "../look/memory";

const memory = "gylebook-bench-welcome";

export interface WaysOn {
  startOwnBatch: () => unknown;
  tryFormula: () => unknown;
}

export interface Welcome {
  /** What the ways do, once the example is open. A way that was chosen before is gone then. */
  lead(ways: WaysOn): void;
  /** Takes the strip away for good. */
  leave(): void;
  /** What is open is no example: not now. */
  hide(): void;
}

/**
 * Names the finished example as one and shows three ways on, first of all for the keyboard. It goes with the first use of any of
 * them, and never comes back. Called before the grid is drawn, which would have to be drawn again.
 */
export function showWelcome(): Welcome {
  const strip = document.getElementById("welcome")!;
  const isNew = recall(memory) === undefined;
  let lead: (ways: WaysOn) => void = () => undefined;
  const ways = new Promise<WaysOn>((resolve) => (lead = resolve));
  const leave = (): void => {
    if (strip.hidden) return;
    remember(memory, "seen");
    strip.hidden = true;
  };
  const onUse = (id: string, act: (ways: WaysOn) => unknown): void =>
    document.getElementById(id)!.addEventListener("click", () => {
      leave();
      void ways.then(act);
    });
  onUse("welcome-start", ({ startOwnBatch }) => startOwnBatch());
  onUse("welcome-try", ({ tryFormula }) => tryFormula());
  onUse("welcome-guide", () => undefined);
  onUse("welcome-close", () => undefined);
  // The grid listens for keys on the whole page; what is pressed here is not for it.
  strip.addEventListener("keydown", (event) => event.stopPropagation());
  strip.hidden = !isNew;
  return {
    leave,
    lead: (led) => {
      lead(led);
      if (!strip.hidden) document.getElementById("welcome-start")!.focus();
    },
    hide: () => {
      strip.hidden = true;
    },
  };
}
