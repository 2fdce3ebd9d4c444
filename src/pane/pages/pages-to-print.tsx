import { useState } from "preact/hooks";
import { insertPage, type PageKind } from "../../workbook/sheets/pages/insert-page";
import { howToPrint } from "../look/how-to-print";
import { BatchChoice } from "../sheets/batch-choice";
import { inWorkbook, type Done } from "../sheets/in-workbook";
import { Outcome } from "../sheets/outcome";
import { useBatches } from "../sheets/use-batches";

const pages: readonly { readonly kind: PageKind; readonly title: string; readonly what: string }[] = [
  { kind: "recipe", title: "Recipe page", what: "What goes in, how much, when, and what to beware of: to hang up in the brewery." },
  { kind: "shopping", title: "Shopping list", what: "What the batch needs, what you have, and what is left to buy." },
  { kind: "lesson", title: "Lesson page", what: "For a class: the day's steps with their reasons, room to write, and three predictions." },
  { kind: "labels", title: "Bottle labels", what: "Name, dates, alcohol with its ±, and who made it." },
];

/** One printed page of a batch, of four kinds. */
export function PagesToPrint() {
  const batches = useBatches();
  const [busy, setBusy] = useState<PageKind>();
  const [outcome, setOutcome] = useState<Done<string>>();
  const { chosen } = batches;
  const write = async (kind: PageKind) => {
    if (!chosen) return;
    setBusy(kind);
    setOutcome(
      await inWorkbook("The page was not written, and the workbook is as it was.", (context) =>
        insertPage(context, chosen.sheetName, kind),
      ),
    );
    setBusy(undefined);
    await batches.refresh();
  };
  return (
    <section class="screen" aria-labelledby="pages-title">
      <h1 id="pages-title">Pages to print</h1>
      <p class="lead">Each is one page made from the batch sheet, and follows it.</p>
      <BatchChoice batches={batches} />
      {chosen &&
        pages.map(({ kind, title, what }) => (
          <article key={kind} class="answer">
            <h2>{title}</h2>
            <p>{what}</p>
            <button type="button" disabled={busy !== undefined} aria-label={`Write the page: ${title}`} onClick={() => void write(kind)}>
              {busy === kind ? "Writing…" : "Write the page"}
            </button>
          </article>
        ))}
      {chosen && <p class="hint">The pages have {chosen.contents.units === "us" ? "Letter" : "A4"} size.</p>}
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
