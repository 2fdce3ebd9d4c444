import { linesPoints, type SheetBuilder } from "../../grid/plan/sheet-builder";
import type { BatchContents } from "../contents";
import { section } from "../sheet/fields";
import type { ReadingRows } from "../sheet/readings";
import type { UnitWords } from "../unit-words";
import { hopsMessage, mashMessage, roomMessage, steepingMessage, volumesMessage } from "./before-the-boil";
import { clockMessage, figuresMessage } from "./clock-and-figures";
import { courseMessage, finishedMessage, temperatureMessage, yeastMessage } from "./fermentation";
import { originalGravityMessage } from "./original-gravity";
import { pressureMessage, sugarGoesBy } from "./packaging";

/**
 * One thing that the sheet watches. `message` is a native formula that gives the words to show, or "" when there is
 * nothing to say. "look" wants a second look; "stop" wants the brewer to wait, since somebody could get hurt or the
 * batch be lost.
 */
interface Check {
  readonly label: string;
  readonly weight: "look" | "stop";
  readonly message: string;
  /** Lines that its longest words take, two if left out: rows of merged cells do not grow by themselves. */
  readonly lines?: 3 | 4;
}

/** How words begin that want a second look, however weighty the check: what cannot be checked, and pressures that hold. */
const asks = ["Cannot", "close:", "within", sugarGoesBy.slice(0, 6)] as const;

/** Words that fit a line, in any spreadsheet program. */
export const charactersOfALine = 104;

/** Cells without a name that the checks look at. */
export interface WatchedCells {
  /** First cells of answers that spill: the water budget, the bitterness of each hop, the timeline. */
  readonly budget: string;
  readonly shares: string;
  readonly timeline: string;
  readonly readings: ReadingRows;
}

function checkList({ units, method }: BatchContents, words: UnitWords, watched: WatchedCells): readonly Check[] {
  return [
    { label: "Gravity against the malt", weight: "look", message: originalGravityMessage(units, words, method), lines: 3 },
    { label: "Volumes", weight: "look", message: volumesMessage(words, watched.budget) },
    { label: "Room in the kettle", weight: "stop", message: roomMessage(units, words, method) },
    method === "extract"
      ? { label: "Steeping", weight: "look", message: steepingMessage(units, words) }
      : { label: "Mash", weight: "look", message: mashMessage(units, words) },
    { label: "Hops", weight: "look", message: hopsMessage(watched.shares) },
    { label: "Yeast", weight: "look", message: yeastMessage },
    { label: "Temperature of the beer", weight: "look", message: temperatureMessage(units, words) },
    { label: "Course of the gravity", weight: "look", message: courseMessage(watched.readings) },
    { label: "Has it finished?", weight: "stop", message: finishedMessage },
    { label: "Pressure in the bottle", weight: "stop", message: pressureMessage(units), lines: 4 },
    { label: "Clock of the brew day", weight: "look", message: clockMessage(units, words, watched.timeline) },
    { label: "Figures", weight: "look", message: figuresMessage(units, words), lines: 3 },
  ];
}

/** 10. Checks: what looks wrong or unsafe on this sheet, in words. A check that cannot be made says so. */
export function checks(b: SheetBuilder, contents: BatchContents, words: UnitWords, watched: WatchedCells): void {
  section(b, 10, "Checks", "What looks wrong or unsafe on this sheet");
  const first = b.row;
  for (const { label, weight, message, lines } of checkList(contents, words, watched)) {
    b.put("A", label, { style: "label" });
    b.put("C", `=IFERROR(${message},"Cannot be checked: a figure it needs shows an error.")`, {
      style: "message",
      format: "text",
      mergeTo: "I",
    });
    b.height(linesPoints(lines ?? 2));
    b.put("B", `=IF(C${b.row}="","fine",IF(OR(${asks.map((begins) => `LEFT(C${b.row},6)="${begins}"`).join(",")}),"look","${weight}"))`, {
      style: "result",
    });
    b.row += 1;
  }
  const last = b.row - 1;
  b.name("check_states", `B${first}:B${last}`);
  b.name("check_texts", `C${first}:C${last}`);
  b.highlight({ range: `B${first}:B${last}`, formula: `=$B${first}="stop"`, fill: "#7A1F1F", color: "#FFFFFF", bold: true });
  b.highlight({ range: `B${first}:B${last}`, formula: `=$B${first}="look"`, fill: "#F2D58A", color: "#3A2A00", bold: true });
}
