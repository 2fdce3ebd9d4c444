import type { BatchContents } from "../contents";
import { section, type BatchBuilder } from "./fields";
import { meaningsIn } from "../../../functions/trade-words";
import { blocksOf } from "./blocks";
import { ourSteps } from "./steps";

/** Rows of a new sheet's clock and of its steps; a teacher may add a few. A batch with more lines gets as many. */
const usualTimelineRows = 23;
const usualStepRows = 18;
/** Lines that the clock adds to the steps and the hops: boil, flame-out, the end; and the stand where there is one. */
const linesOfItsOwn = ({ hops, hopStand }: BatchContents): number =>
  hopStand.minutes !== "" || hops.some(({ minutes }) => minutes === "stand") ? 4 : 3;

const stepsOf = (contents: BatchContents) => contents.steps ?? ourSteps(contents.method, contents.units, blocksOf(contents));

/**
 * 6. Brew day by the clock. The steps that it is made of stand to the right,
 * outside the printed page, where a teacher edits them; beside them is the timeline as one spilled call, which the
 * printed lines repeat in a readable order. Returns the first cell of that call.
 */
export function brewDay(b: BatchBuilder, contents: BatchContents): string {
  const { happened } = contents;
  const timelineRows = Math.max(
    b.tableRows["Timeline"] ?? usualTimelineRows,
    stepsOf(contents).length + linesOfItsOwn(contents) + contents.hops.length,
    happened.length,
  );
  section(b, 6, "Brew day by the clock", "Write the real time beside each line; steps are edited on the right, from column K");
  const heading = b.row;
  const first = heading + 1;
  const said = stepsOf(contents)
    .map(({ what }) => String(what))
    .join(" ");
  const note = meaningsIn(said).join(" ");
  b.put("A", "What to do", { style: "heading", mergeTo: "B", ...(note !== "" && { note }) });
  b.put("C", "Planned", { style: "headingRight" });
  b.put("D", "Boil minute", { style: "headingRight" });
  b.put("E", "Amount", { style: "headingRight" });
  b.put("F", "Happened", { style: "headingRight" });
  b.put("G", "Beware", { style: "heading", mergeTo: "I" });
  for (let index = 0; index < timelineRows; index += 1) {
    const row = first + index;
    clockRow(b, row, row);
    b.put("F", happened[index] ?? "", { style: "input", format: "time" }, row);
  }
  b.name("happened", `F${first}:F${first + timelineRows - 1}`);
  stepTable(b, contents, heading);
  b.put("Q", "Timeline of the steps and hops (calculates)", { style: "hint" }, heading);
  b.put(
    "Q",
    '=GYLE.DAY.TIMELINE(IF(N(brewed_on)=0,"",brewed_on+N(start_time)),steps,hop_plan,boil_minutes,units,IF(N(boil_minutes)=0,"no boil","boil"),stand_temperature,stand_minutes,stand_after,"begin")',
    { style: "workings", format: "time", spillsTo: `U${first + timelineRows - 1}` },
    first,
  );
  b.name("timeline", `Q${first}:U${first + timelineRows - 1}`);
  b.row = first + timelineRows;
  b.gap();
  return `Q${first}`;
}

/** A printed line of the clock, from its row among the workings. */
function clockRow(b: BatchBuilder, row: number, from: number): void {
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

function stepTable(b: BatchBuilder, contents: BatchContents, heading: number): void {
  const steps = stepsOf(contents);
  const stepRows = Math.max(b.tableRows["Steps"] ?? usualStepRows, steps.length);
  for (const [column, text] of [
    ["K", "Step"],
    ["L", "Part"],
    ["M", "Minutes"],
    ["N", "Beware of"],
    ["O", "Why"],
  ] as const)
    b.put(column, text, { style: "heading" }, heading);
  for (let index = 0; index < stepRows; index += 1) {
    const row = heading + 1 + index;
    const step = steps[index];
    b.put("K", step?.what ?? "", { style: "inputText" }, row);
    b.put("L", step?.part ?? "", { style: "input" }, row);
    b.put("M", step?.minutes ?? "", { style: "input", format: "whole" }, row);
    b.put("N", step?.caution ?? "", { style: "inputText" }, row);
    b.put("O", step?.why ?? "", { style: "inputText" }, row);
  }
  b.table({ name: "Steps", range: `K${heading}:O${heading + stepRows}` });
  b.name("steps", `K${heading + 1}:O${heading + stepRows}`);
  b.validate({
    kind: "list",
    range: `L${heading + 1}:L${heading + stepRows}`,
    choices: ["before", "boil", "after"],
    message: "before, boil or after: the part of the day.",
  });
}
