import { counted } from "../../grid/words/counted";
import { quantity, type UnitSystem } from "../../../functions/quantities";
import { unitWords } from "../../batch/unit-words";
import { SheetBuilder } from "../../grid/plan/sheet-builder";
import type { SheetPlan } from "../../grid/plan/sheet-plan";
import { sheetPrefix } from "../../grid/words/sheet-reference";
import type { LogRow } from "./read-log";

export interface LogSheetOptions {
  readonly sheetName: string;
  readonly batchSheet: string;
  readonly units: UnitSystem;
  readonly rows: readonly LogRow[];
}

const firstRow = 13;
/** Empty rows below the readings: what somebody types there later looks as theirs, and counts. */
const spareRows = 30;

/** All readings of a device on a sheet of their own, as values in a table, with the fit over every one of them. Printed are the fit and the chart, not thousands of rows. */
export function planLog({ sheetName, batchSheet, units, rows }: LogSheetOptions): SheetPlan {
  const b = new SheetBuilder();
  const words = unitWords(units);
  const prefix = sheetPrefix(batchSheet);
  const last = firstRow + rows.length + spareRows - 1;
  b.height(28);
  b.put("A", `="Readings of "&${prefix}batch_name`, { style: "title", mergeTo: "E" });
  b.put(
    "A",
    `${counted(rows.length, "reading")} from a device, all of them. The batch sheet holds the few that keep their course.`,
    { style: "hint", mergeTo: "E" },
    2,
  );
  b.height(18, 3);
  b.put("A", "By all readings", { style: "section", mergeTo: "B" }, 3);
  b.put("C", "± holds 19 times out of 20", { style: "sectionHint", mergeTo: "E" }, 3);
  const formats = ["text", "fineGravity", "dateTime", "whole", "fineGravity", "text"] as const;
  for (const [index, format] of formats.entries()) {
    const row = 4 + index;
    const top = index === 0;
    b.put(
      "A",
      top ? `=GYLE.LOG.FORECAST(log_times,log_gravities,${prefix}og,${prefix}fg_expected)` : "",
      { style: "label", ...(top && { spillsTo: "C9" }) },
      row,
    );
    b.put("B", "", { style: "keyResult", format }, row);
    b.put("C", "", { style: "result", format: format === "dateTime" ? "one" : format }, row);
  }
  b.put("D", "in days for the day it gets there", { style: "unit" }, 6);
  b.put("A", "A forecast is no reading: package only when two readings a day apart agree.", { style: "caution", mergeTo: "E" }, 10);
  const headings = [
    ["A", "When"],
    ["B", "Gravity"],
    ["C", `Beer ${words.temperature}`],
  ] as const;
  for (const [letter, text] of headings) b.put(letter, text, { style: letter === "A" ? "heading" : "headingRight" }, firstRow - 1);
  for (let row = firstRow; row <= last; row += 1) {
    const { when = "", gravity = "", temperatureC } = rows[row - firstRow] ?? {};
    const temperature = temperatureC === undefined ? "" : Number(quantity("temperature").fromCore(temperatureC, units).toFixed(2));
    b.put("A", when, { style: "inputText", format: "dateTime" }, row);
    b.put("B", gravity, { style: "input", format: "fineGravity" }, row);
    b.put("C", temperature, { style: "input", format: "one" }, row);
  }
  b.table({ name: "Log", range: `A${firstRow - 1}:C${last}` });
  b.name("log_times", `A${firstRow}:A${last}`);
  b.name("log_gravities", `B${firstRow}:B${last}`);
  b.chart({
    name: "Log",
    title: "Gravity, by the device",
    horizontal: { format: "monthDay" },
    vertical: { format: "gravity" },
    series: [{ name: "Gravity", across: `A${firstRow}:A${last}`, values: `B${firstRow}:B${last}`, color: "#1F5150", look: "line" }],
    from: "G3",
    to: "N22",
  });
  const paper = units === "us" ? "letter" : "a4";
  const widths = [24, 17, 11, 30, 6, 3, 10, 10, 10, 10, 10, 10, 10, 10];
  return b.build(
    sheetName,
    widths,
    {
      area: "A1:N22",
      paper,
      landscape: true,
      onePage: true,
      breaksBeforeRow: [],
      footer: `${sheetName} · page &P of &N`,
    },
    2,
  );
}
