import { useState } from "preact/hooks";
import { insertScoreSheets } from "../../workbook/sheets/club/blind-tasting";
import { ChoiceField } from "../fields/choice-field";
import { inWorkbook, type Done } from "../sheets/in-workbook";
import { Outcome } from "../sheets/outcome";
import { newWorkbookWords } from "../unplug/new-workbook-words";

type Form = "sheets" | "workbook";
const buttons: Record<Form, string> = { sheets: "Write the score sheets", workbook: "Make a workbook of the score sheets" };

/** A score sheet for each taster, with the beers in an order of their own. */
export function ScoreSheetsOut({ sheetName, tasters }: { readonly sheetName: string; readonly tasters: readonly string[] }) {
  const [form, setForm] = useState<Form>("sheets");
  const [busy, setBusy] = useState(false);
  const [outcome, setOutcome] = useState<Done<{ readonly form: Form; readonly count: number }>>();
  const make = async () => {
    setBusy(true);
    setOutcome(
      await inWorkbook("No score sheet was made, and the workbook is as it was.", async (context) => {
        const open = form === "workbook" ? (base64: string) => Excel.createWorkbook(base64) : undefined;
        return { form, count: (await insertScoreSheets(context, sheetName, open)).length };
      }),
    );
    setBusy(false);
  };
  return (
    <>
      <p class="hint">
        {tasters.length === 0
          ? `“${sheetName}” names no taster yet: type their names into its first column.`
          : `For ${tasters.join(", ")}. Each gets the beers in an order of their own; no sheet tells which beer is which.`}
      </p>
      <ChoiceField
        legend="Score sheets as"
        name="score-form"
        value={form}
        choices={[
          ["sheets", "Sheets in this workbook, to print or to fill in here"],
          ["workbook", "A new workbook, for members without Gylebook"],
        ]}
        onChange={(chosen) => {
          setForm(chosen);
          setOutcome(undefined);
        }}
      />
      <button type="button" class="main-action" disabled={busy} onClick={() => void make()}>
        {busy ? "Writing…" : buttons[form]}
      </button>
      <Outcome outcome={outcome}>
        {({ form: made, count }) => (
          <p>
            {count} {count === 1 ? "score sheet" : "score sheets"} made.{" "}
            {made === "workbook" && newWorkbookWords(count === 1 ? "it" : "them")}
          </p>
        )}
      </Outcome>
    </>
  );
}
