/** Returns whether it has dealt with the key. */
export type KeyHandler = (event: KeyboardEvent) => boolean;

/**
 * The grid hears of every key at the window, and acts at once; whoever is to come before it must listen before it does.
 * Call it before the grid is made, and add handlers later.
 */
export function keysBeforeGrid(target: Window): { add(handler: KeyHandler): void } {
  const handlers: KeyHandler[] = [];
  target.addEventListener(
    "keydown",
    (event) => {
      if (!handlers.some((handler) => handler(event))) return;
      event.preventDefault();
      event.stopImmediatePropagation();
    },
    { capture: true },
  );
  return { add: (handler) => void handlers.push(handler) };
}
