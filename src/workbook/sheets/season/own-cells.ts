import { translateFormulaToA1, translateFormulaToR1C1 } from "@borgar/fx";
import type { CellContent } from "../../grid/plan/sheet-plan";

const isFormula = (content: CellContent): content is string => typeof content === "string" && content.startsWith("=");

/** A formula that the brewer wrote beside a batch goes on speaking of its own row when the row moves. */
export const moved = {
  /** As it stands in a cell → as it can be carried elsewhere. */
  up: (content: CellContent, address: string): CellContent => (isFormula(content) ? translateFormulaToR1C1(content, address) : content),
  /** As it was carried → as it stands in its new cell. */
  down: (content: CellContent, address: string): CellContent => (isFormula(content) ? translateFormulaToA1(content, address) : content),
};
