import { TakeBack, writeSurely } from "./write-surely";

/** Excel has the pane, but not the functions yet (OfficeDev/office-js issues 6126, 6399, 6611): what is entered now stays #NAME? for ever. */
export class FunctionsUnknown extends TakeBack {
  override name = "FunctionsUnknown";

  constructor() {
    super(
      "Excel does not know Gylebook's functions yet, so every figure would have stayed at #NAME?. Nothing was written. Close Excel altogether, with all its windows, open it again, then try once more. Formulas that came in so before are repaired by Check (Help).",
    );
  }
}

const isOurs = (formula: unknown): boolean => typeof formula === "string" && formula.startsWith("=") && /\bGYLE\./i.test(formula);

/** Whether any of these is a formula with a function of ours. */
export const needFunctions = (formulas: Iterable<unknown>): boolean => {
  for (const formula of formulas) if (isOurs(formula)) return true;
  return false;
};

/** What is asked. Formulas that are to stay often answer with an empty text before they come to a function. */
const question = "=GYLE.WORT.SG(10)";

/**
 * Queues the question to Excel whether it knows our functions, in a cell that is written over afterwards. It must come before
 * calculation is suspended. After the next `context.sync()` the answer can be called.
 *
 * @throws FunctionsUnknown by the answer
 */
export function askFunctions(cell: Excel.Range): () => void {
  cell.formulas = [[question]];
  cell.load("values");
  // Any other answer, #BUSY! among them, comes from somebody who knows the name.
  return () => {
    if (cell.values[0]?.[0] === "#NAME?") throw new FunctionsUnknown();
  };
}

/**
 * Asks in an empty cell of a sheet, which is empty again afterwards: one `context.sync()`. Whoever writes over formulas asks before
 * that, for these would be at #NAME? as well once they were put back.
 *
 * @throws FunctionsUnknown; otherwise as `writeSurely`
 */
export async function askInEmptyCell(context: Excel.RequestContext, sheetName: string, address: string): Promise<void> {
  const cell = () => context.workbook.worksheets.getItem(sheetName).getRange(address);
  await writeSurely({
    place: `${address} on “${sheetName}”`,
    write: async () => {
      const refuseUnknown = askFunctions(cell());
      cell().clear("Contents");
      await context.sync();
      refuseUnknown();
    },
    look: async () => {
      const now = cell().load("formulas");
      await context.sync();
      return now.formulas[0]?.[0] === question ? "half" : "nothing";
    },
    takeBack: async () => {
      cell().clear("Contents");
      await context.sync();
    },
  });
}
