/** A file dropped anywhere on the page is opened. Dragging cells inside the grid is none of our business. */
export function acceptDroppedFiles(open: (file: File) => void): void {
  const hint = document.getElementById("drop-hint")!;
  const carriesFiles = (event: DragEvent) => event.dataTransfer?.types.includes("Files") === true;
  let depth = 0;

  const show = (change: number) => {
    depth = Math.max(0, depth + change);
    hint.hidden = depth === 0;
  };
  // Caught on the way down: the grid would take a dropped picture for itself.
  const listen = (name: "dragenter" | "dragover" | "dragleave" | "drop", handle: (event: DragEvent) => void) =>
    window.addEventListener(
      name,
      (event) => {
        if (!carriesFiles(event)) return;
        event.preventDefault();
        event.stopPropagation();
        handle(event);
      },
      { capture: true },
    );

  listen("dragenter", () => show(1));
  listen("dragleave", () => show(-1));
  listen("dragover", () => undefined);
  listen("drop", (event) => {
    show(-depth);
    const file = event.dataTransfer?.files[0];
    if (file) open(file);
  });
}
