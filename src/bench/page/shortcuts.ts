export interface Shortcuts {
  save: () => void;
  open: () => void;
}

/** Ctrl+S and Ctrl+O (Cmd on a Mac), in the page and in the pane's frame, before the browser or the grid take them. */
export function listenForShortcuts(target: Window, { save, open }: Shortcuts): void {
  target.addEventListener(
    "keydown",
    (event) => {
      if (!(event.ctrlKey || event.metaKey) || event.shiftKey || event.altKey) return;
      const act = { s: save, o: open }[event.key.toLowerCase()];
      if (act === undefined) return;
      event.preventDefault();
      event.stopPropagation();
      if (!event.repeat) act();
    },
    { capture: true },
  );
}
