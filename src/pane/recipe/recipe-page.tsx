import { useState } from "preact/hooks";
import { insertRecipe } from "../../workbook/sheets/recipe/insert-recipe";
import { howToPrint } from "../look/how-to-print";
import { BatchChoice } from "../sheets/batch-choice";
import { inWorkbook, type Done } from "../sheets/in-workbook";
import { Outcome } from "../sheets/outcome";
import { useBatches } from "../sheets/use-batches";

/** One page to hang up in the brewery. */
export function RecipePage() {
  const batches = useBatches();
  const [busy, setBusy] = useState(false);
  const [outcome, setOutcome] = useState<Done<string>>();
  const { chosen } = batches;
  const write = async () => {
    if (!chosen) return;
    setBusy(true);
    setOutcome(
      await inWorkbook("The page was not written, and the workbook is as it was.", (context) => insertRecipe(context, chosen.sheetName)),
    );
    setBusy(false);
    await batches.refresh();
  };
  return (
    <section class="screen" aria-labelledby="recipe-title">
      <h1 id="recipe-title">Recipe page</h1>
      <p class="lead">One page to print: what goes in, how much, when, and what to beware of.</p>
      <BatchChoice batches={batches} />
      {chosen && (
        <>
          <p class="hint">
            The page repeats the batch sheet and follows it. It has {chosen.contents.units === "us" ? "Letter" : "A4"} size.
          </p>
          <button type="button" class="main-action" disabled={busy} onClick={() => void write()}>
            {busy ? "Writing…" : "Write the page"}
          </button>
        </>
      )}
      <Outcome outcome={outcome}>
        {(pageName) => (
          <p>
            “{pageName}” is in the workbook. Print it {howToPrint()}.
          </p>
        )}
      </Outcome>
    </section>
  );
}
