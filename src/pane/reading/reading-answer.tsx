import type { BatchSheet } from "../../workbook/batch/read/batch-sheets";
import type { SheetReading } from "../../workbook/brewing/companion/reading/corrected";
import { firstEmptyRow } from "../../workbook/brewing/companion/reading/add-reading";
import { standing } from "../../workbook/brewing/companion/reading/standing";
import { gravityWords } from "../../workbook/brewing/companion/words";

/** The corrected gravity, before anything is written. */
export function CorrectedLine({
  ready,
  problem,
  sheet,
}: {
  readonly ready: SheetReading | undefined;
  readonly problem: string;
  readonly sheet: BatchSheet;
}) {
  if (!ready)
    return problem === "" ? null : (
      <p class="problem" role="status">
        {problem}
      </p>
    );
  return (
    <div class="answer">
      <p>
        Gravity <strong>{gravityWords(ready.gravity)}</strong>
      </p>
      {ready.note && <p class="hint">{ready.note} The sheet gets it as SG, with this as a note.</p>}
      {firstEmptyRow(sheet) === undefined && <p class="hint">The table of readings is full: it gets one more row.</p>}
    </div>
  );
}

/** After writing: what the sheet makes of it. */
export function StandingLines({ sheet, wort }: { readonly sheet: BatchSheet; readonly wort: boolean }) {
  if (wort) return <p>The original gravity is in the sheet. {sheet.text("next_step")}</p>;
  const { means, next, readAgain } = standing(sheet);
  return (
    <div class="answer">
      <p>
        <b>{means}</b>
      </p>
      <p>{next}</p>
      {readAgain && <p>{readAgain}</p>}
    </div>
  );
}
