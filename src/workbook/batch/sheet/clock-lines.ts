import type { BatchBuilder } from "./fields";

/** A printed line of the clock, from its row among the workings. */
export function clockRow(b: BatchBuilder, row: number, from: number): void {
  const show = (column: string) => `=IF(${column}${from}="","",${column}${from})`;
  b.height(13.5, row);
  b.put("A", show("S"), { style: "resultText", format: "text", mergeTo: "B" }, row);
  b.put("C", show("Q"), { style: "result", format: "time" }, row);
  b.put("D", show("R"), { style: "result", format: "whole" }, row);
  b.put("E", show("T"), { style: "result", format: "text" }, row);
  b.put("G", show("U"), { style: "caution", format: "text", mergeTo: "I" }, row);
}

/** Lines that the clock may have beyond its rows where hops go in late: six hops and a stand are two more than there is room for. */
export const furtherLines = 3;

/** The clock's last lines, dry hops last of all, where there are more than section 6 prints: its rows stay, whatever block comes later. */
export function furtherClock(b: BatchBuilder): void {
  const after = (b.rowsOf("timeline").at(-1) ?? 0) + 1;
  b.put("A", `=IF(S${after}="","","Further lines of the clock (section 6)")`, { style: "hint", format: "text" });
  b.row += 1;
  for (let index = 0; index < furtherLines; index += 1) {
    clockRow(b, b.row, after + index);
    b.put("F", "", { style: "result", format: "text" }, b.row);
    b.row += 1;
  }
}
