import { isExcel } from "../parts/is-excel";

/** How the sheet in front is printed, in words: the page around the pane on the bench has a button for it, Excel has its menu. */
export const howToPrint = (): string => (isExcel() ? "from Excel's File menu" : "with Print in the bar above (Ctrl+P)");
