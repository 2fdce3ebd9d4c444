import { useEffect, useState } from "preact/hooks";
import type { DecimalSign } from "../../workbook/grid/formulas/writing";

let asked: Promise<DecimalSign> | undefined;

/** What Excel puts between whole and tenth, by its own settings or the computer's. A point where it cannot tell. */
async function ask(): Promise<DecimalSign> {
  try {
    return await Excel.run({ delayForCellEdit: true }, async (context) => {
      const { application } = context;
      application.load("decimalSeparator");
      await context.sync();
      return application.decimalSeparator === "," ? "," : ".";
    });
  } catch {
    asked = undefined;
    return ".";
  }
}

/** The host's decimal sign; a point until it has answered. */
export function useDecimalSign(): DecimalSign {
  const [decimal, setDecimal] = useState<DecimalSign>(".");
  useEffect(() => void (asked ??= ask()).then(setDecimal), []);
  return decimal;
}
