import { Fragment } from "preact";
import { useRef, useState } from "preact/hooks";
import { addReading } from "../../workbook/brewing/companion/reading/add-reading";
import { corrected } from "../../workbook/brewing/companion/reading/corrected";
import { originalGravity, writeOriginal } from "../../workbook/brewing/companion/reading/original-gravity";
import { readingDoubts, readingProblem } from "../../workbook/brewing/companion/reading/reading-doubts";
import { madeFor } from "../../workbook/batch/read/batch-contents";
import { batchIdOf } from "../../workbook/batch/read/batch-sheets";
import { dayNumberAt } from "../../workbook/brewing/companion/wall-clock";
import { BatchScreen, type Batch } from "../companion/batch-screen";
import { fieldMoment, nowField } from "../fields/moments";
import { numberIn } from "../fields/number-field";
import { Doubts } from "../companion/doubts";
import { OutcomeLine } from "../companion/outcome-line";
import { useChange } from "../companion/use-change";
import { ChoiceField } from "../fields/choice-field";
import { BeerFields, WortFields } from "./liquid-fields";
import { InstrumentFields } from "./instrument-fields";
import { DryHopsForm } from "./dry-hops-form";
import { firstFields, measuredIn, originalIn, type ReadingFields } from "./reading-fields";
import { CorrectedLine, StandingLines } from "./reading-answer";

export const Reading = () => (
  <BatchScreen title="Reading">
    {(batch) => (
      <Fragment key={batchIdOf(batch.sheet)}>
        <ReadingForm {...batch} />
        <DryHopsForm {...batch} />
      </Fragment>
    )}
  </BatchScreen>
);

/** One reading: corrected before it is written, questioned where it cannot be, then what it means. */
function ReadingForm({ sheet, reload }: Batch) {
  const [fields, setFields] = useState(() => firstFields(sheet));
  const [asked, setAsked] = useState(false);
  /** The form may have stood open since the last reading: unless the brewer gives another time, a reading is of when it is typed. */
  const whenTyped = useRef(false);
  const { busy, outcome, make, forget } = useChange(reload);
  const on = madeFor(sheet);
  const wort = fields.liquid === "wort";
  const change = (part: Partial<ReadingFields>) => {
    setFields((before) => ({
      ...before,
      ...part,
      ...(before.reading === "" && part.reading && !whenTyped.current && { when: nowField() }),
    }));
    if (part.when !== undefined) whenTyped.current = true;
    setAsked(false);
    forget();
  };

  const original = wort ? originalGravity(sheet, originalIn(fields)) : undefined;
  const beer = wort ? undefined : corrected(sheet, measuredIn(fields), "beer");
  const { ready, problem } = original ?? beer ?? {};
  const when = fieldMoment(fields.when);
  const doubts = original?.ready
    ? original.ready.doubts
    : beer?.ready && when !== ""
      ? readingDoubts(sheet, { ...beer.ready, when, beerTemperature: numberIn(fields.beerTemperature) }, dayNumberAt(Date.now()))
      : [];
  const complete = ready !== undefined && (wort || when !== "");

  const write = async () => {
    if (doubts.length > 0 && !asked) return setAsked(true);
    const result = await make(async (context) => {
      if (original?.ready) await writeOriginal(context, sheet, original.ready);
      else if (beer?.ready && when !== "")
        await addReading(context, sheet, { ...beer.ready, when, beerTemperature: numberIn(fields.beerTemperature) });
    });
    setAsked(false);
    if (result.kind !== "written") return;
    whenTyped.current = false;
    setFields((before) => ({ ...before, reading: "", sampleTemperature: "", beerTemperature: "", volume: "", when: nowField() }));
  };

  return (
    <form
      noValidate
      onKeyDown={({ key }) => key === "Escape" && setAsked(false)}
      onSubmit={(event) => {
        event.preventDefault();
        if (complete) void write();
      }}
    >
      <ChoiceField
        legend="What was read"
        name="liquid"
        value={fields.liquid}
        choices={[
          ["wort", "Wort, before the yeast"],
          ["beer", "Beer, from the fermenter"],
        ]}
        onChange={(liquid) => change({ liquid })}
      />
      <InstrumentFields fields={fields} on={on} change={change} />
      {wort ? (
        <WortFields fields={fields} on={on} hasTopUp={Number(sheet.number("top_up")) > 0} change={change} />
      ) : (
        <BeerFields fields={fields} on={on} change={change} />
      )}
      <CorrectedLine
        ready={ready}
        problem={beer ? readingProblem(sheet, measuredIn(fields), problem ?? "", dayNumberAt(Date.now())) : (problem ?? "")}
        sheet={sheet}
      />
      {asked && doubts.length > 0 && <Doubts doubts={doubts} />}
      <button type="submit" class="main-action" disabled={busy || !complete}>
        {busy ? "Writing…" : asked && doubts.length > 0 ? "Write it all the same" : "Write the reading"}
      </button>
      <OutcomeLine outcome={outcome}>{outcome?.kind === "written" && <StandingLines sheet={sheet} wort={wort} />}</OutcomeLine>
    </form>
  );
}
