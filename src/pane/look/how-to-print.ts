/** How the sheet in front is printed, in words: the page around the pane on the bench has a button for it, Excel has its menu. */
export const howToPrint = (): string =>
  document.documentElement.dataset["host"] === "bench" ? "with Print in the bar above (Ctrl+P)" : "from Excel's File menu";
