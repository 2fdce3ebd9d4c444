import { useState } from "preact/hooks";
import type { Filled } from "../../workbook/batch/contents";
import { madeFor } from "../../workbook/batch/read/batch-contents";
import { dryHops, dryHopsForm, dryHopsProblem, writeDryHops } from "../../workbook/brewing/companion/reading/dry-hops";
import { dayNumberAt } from "../../workbook/brewing/companion/wall-clock";
import { dayShown } from "../../workbook/grid/words/day-words";
import type { Batch } from "../companion/batch-screen";
import { OutcomeLine } from "../companion/outcome-line";
import { useChange } from "../companion/use-change";
import { DescribedField } from "../fields/described-field";

/** When the dry hops went in: from then on only later readings tell whether the beer has finished. Nothing where the batch has none. */
export function DryHopsForm({ sheet, reload }: Batch) {
  const [day, setDay] = useState<Filled<number>>("");
  const { busy, outcome, make, forget } = useChange(reload);
  const hops = dryHops(sheet);
  if (!hops) return null;
  const problem = dryHopsProblem(sheet, day, dayNumberAt(Date.now()));
  return (
    <form
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        if (day !== "" && problem === "") void make((context) => writeDryHops(context, sheet, day));
      }}
    >
      <h2>Dry hops</h2>
      {hops.noted !== undefined ? (
        <p>
          {hops.names.join(", ")}: in since {dayShown(hops.noted)}.
        </p>
      ) : (
        <>
          <p>{hops.names.join(", ")}: add them slowly, beer can gush.</p>
          <DescribedField
            fields={dryHopsForm}
            name="dryHoppedOn"
            on={madeFor(sheet)}
            typed={{ dryHoppedOn: day }}
            onChange={({ dryHoppedOn = "" }) => {
              setDay(dryHoppedOn);
              forget();
            }}
          />
          {problem && <p class="problem">{problem}</p>}
          <button type="submit" disabled={busy || day === "" || problem !== ""}>
            {busy ? "Writing…" : "Write the day of the dry hops"}
          </button>
        </>
      )}
      <OutcomeLine outcome={outcome}>{outcome?.kind === "written" && <p class="good">Written.</p>}</OutcomeLine>
    </form>
  );
}
