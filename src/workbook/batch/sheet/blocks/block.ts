import type { BatchContents } from "../../contents";
import type { UnitWords } from "../../unit-words";
import { rowHeightPoints } from "../../../grid/plan/sheet-builder";
import type { BatchBuilder, BatchLines, Field } from "../fields";

/** How a block of its choice stands on the sheet, between its heading and its line of checks. */
export interface Block {
  /** Printed rows; leaves `b.row` below them. */
  readonly put: (b: BatchBuilder, contents: BatchContents, lines: BatchLines, words: UnitWords) => void;
  /** Workings to the right of its first rows, outside the printed page. */
  readonly beside?: (contents: BatchContents, words: UnitWords) => readonly [string, Field][];
}

/** Lines of caution below a block's fields, in the row that would part them from what follows. */
export function cautionsBelow(b: BatchBuilder, cautions: readonly string[]): void {
  b.row -= 1;
  for (const caution of cautions) {
    b.put("A", caution, { style: "caution", format: "text", mergeTo: "I" });
    b.height(rowHeightPoints);
    b.row += 1;
  }
  b.gap();
}
