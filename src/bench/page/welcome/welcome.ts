import { recall, remember } from "../look/memory";

const memory = "gylebook-bench-welcome";

export interface WaysOn {
  startOwnBatch: () => unknown;
  tryFormula: () => unknown;
}

/**
 * Names the finished example as one and shows three ways on, first of all for the keyboard. It goes with the first use of any of
 * them, and with another workbook, and never comes back.
 *
 * @param onOpened called with what is to happen when another workbook is opened
 */
export function welcome(ways: WaysOn, onOpened: (listener: () => void) => void): void {
  if (recall(memory) !== undefined) return;
  const strip = document.getElementById("welcome")!;
  const leave = (): void => {
    if (strip.hidden) return;
    remember(memory, "seen");
    strip.hidden = true;
  };
  const onUse = (id: string, act: () => unknown): void =>
    document.getElementById(id)!.addEventListener("click", () => {
      leave();
      act();
    });
  onUse("welcome-start", ways.startOwnBatch);
  onUse("welcome-try", ways.tryFormula);
  onUse("welcome-guide", () => undefined);
  onUse("welcome-close", () => undefined);
  // The grid listens for keys on the whole page; what is pressed here is not for it.
  strip.addEventListener("keydown", (event) => event.stopPropagation());
  onOpened(leave);
  strip.hidden = false;
  document.getElementById("welcome-start")!.focus();
}
