import { ILayoutService } from "@univerjs/preset-sheets-core";
import type { Injector } from "@univerjs/core";
import type { KeyHandler } from "./keys-before-grid";

/**
 * When one of the grid's boxes closes, the browser gives the keyboard to nobody, and what is typed next would be lost.
 * Such a key goes to the grid instead. After a button of the page's own bar the keyboard is left where it is.
 */
export function keepKeyboardInGrid(injector: Injector, keys: { add(handler: KeyHandler): void }): void {
  const grid = document.getElementById("grid")!;
  let lastInGrid = true;
  window.addEventListener("focusin", ({ target }) => {
    lastInGrid = isGrids(grid, target);
  });
  keys.add(() => {
    // Focus moved while a key goes down takes that very key along.
    if (lastInGrid && document.activeElement === document.body) injector.get(ILayoutService).focus();
    return false;
  });
}

/** The grid hangs some of its boxes at the end of the page. */
const isGrids = (grid: HTMLElement, target: EventTarget | null): boolean =>
  target instanceof Element &&
  (grid.contains(target) || target.closest("#welcome, .bench-bar, .bench-main, #notices, dialog, #file-input") === null);
