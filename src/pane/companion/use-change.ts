import { useState } from "preact/hooks";
import { carryOut, type Outcome } from "../../workbook/brewing/companion/outcome";

/** One change at a time, with its outcome; the sheet is read again afterwards, however it went. */
export function useChange(reload: () => Promise<void>) {
  const [busy, setBusy] = useState(false);
  const [outcome, setOutcome] = useState<Outcome>();
  const make = async (change: (context: Excel.RequestContext) => Promise<void>): Promise<Outcome> => {
    setBusy(true);
    setOutcome(undefined);
    const result = await carryOut(change);
    await reload();
    setOutcome(result);
    setBusy(false);
    return result;
  };
  return { busy, outcome, make, forget: () => setOutcome(undefined) };
}
