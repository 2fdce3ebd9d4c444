import type { Injector } from "@univerjs/core";
import { IRenderManagerService } from "@univerjs/engine-render";

/** Somebody who works in the grid meanwhile sees it at once. */
const used = ["pointerdown", "pointermove", "wheel", "keydown", "resize"] as const;

/**
 * While a page starts, the grid draws itself anew for every part of it that comes to life, a fifth of a second each on a small computer,
 * though it shows the same. From the first drawing on it waits until all is there, or until somebody turns to it, and then draws once.
 *
 * @param until what is waited for
 */
export function drawOnceWhen(injector: Injector, unitId: string, until: Promise<unknown>): void {
  const engine = injector.get(IRenderManagerService).getRenderById(unitId)?.engine;
  if (!engine) return;
  const listening = new AbortController();
  const draw = (): void => {
    engine.renderEvenInBackground = true;
    listening.abort();
  };
  engine.renderEvenInBackground = false;
  for (const event of used) window.addEventListener(event, draw, { capture: true, signal: listening.signal });
  void until.finally(draw);
}
