/** Whether Excel itself is around the pane: the bench says of itself that it is the bench. */
export const isExcel = (): boolean => String((Office.context as Partial<Office.Context>).diagnostics?.platform) !== "Bench";
