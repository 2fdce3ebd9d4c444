export interface Shortcuts {
  save: () => void;
  open: () => void;
  print: () => void;
}

/** Ctrl+S, Ctrl+O and Ctrl+P (Cmd on a Mac), in the page and in the pane's frame, before the browser or the grid take them. */
export function listenForShortcuts(target: Window, { save, open, print }: Shortcuts): void {
  target.addEventListener(
    "keydown",
    (event) => {
      if (!(event.ctrlKey || event.metaKey) || event.shiftKey || event.altKey) return;
      const act = { s: save, o: open, p: print }[event.key.toLowerCase()];
      if (act === undefined) return;
      event.preventDefault();
      event.stopPropagation();
      if (!event.repeat) act();
    },
    { capture: true },
  );
}
