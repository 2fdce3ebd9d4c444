import { useState } from "preact/hooks";
import { ChoiceField } from "../fields/choice-field";
import { useLongWork } from "../parts/use-long-work";
import { isExcel } from "../parts/is-excel";
import { WorkProgress } from "../parts/work-progress";
import { PlugIn } from "./plug-in";
import { UnplugResult } from "./unplug-result";
import { canPlugInAgain } from "../../workbook/exchange/unplug";
import { unplug, type Unplugged, type UnplugForm } from "./unplug-work";

/** Sheets for people without Gylebook, and the way back. */
export function Unplug() {
  const [form, setForm] = useState<UnplugForm>({ sheets: "this", prices: "without", into: "here" });
  const [outcome, setOutcome] = useState<Unplugged>();
  const work = useLongWork();
  const busy = work.progress !== undefined;
  const change = (part: Partial<UnplugForm>) => setForm((before) => ({ ...before, ...part }));

  return (
    <section class="screen" aria-labelledby="unplug-title">
      <h1 id="unplug-title">Unplug</h1>
      <p class="lead">
        Makes a copy that works without Gylebook: its GYLE formulas become plain ones that calculate in any spreadsheet program, or the
        values they have. Each such cell keeps its GYLE formula in a note, so that a member who has Gylebook can plug it in again; your own
        sheet is not changed.
      </p>
      <form
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          setOutcome(undefined);
          void work.run((longWork) => unplug(form, longWork)).then(setOutcome);
        }}
      >
        <ChoiceField
          legend="Copy"
          name="unplug-sheets"
          value={form.sheets}
          choices={[
            ["this", "This sheet"],
            ["batches", "All batch sheets"],
          ]}
          onChange={(sheets) => change({ sheets })}
        />
        <ChoiceField
          legend="Prices"
          name="unplug-prices"
          value={form.prices}
          choices={[
            ["without", "Leave prices out"],
            ["with", "Include prices"],
          ]}
          onChange={(prices) => change({ prices })}
        />
        <ChoiceField
          legend="Into"
          name="unplug-into"
          value={form.into}
          choices={[
            ["here", "This workbook, beside the original"],
            ["new", "A new workbook, without names of people"],
          ]}
          onChange={(into) => change({ into })}
        />
        <p class="hint">
          Notes that begin with the word “private” are left out, and so are words in a batch sheet's cells that begin with it. Anything else
          you wrote is included.
        </p>
        {form.into === "new" && (
          <p class="hint">
            {isExcel() ? "Excel opens the new workbook; save it and pass it on." : "The new workbook is saved as a file, to be passed on."}{" "}
            Formulas that refer to your other sheets are values there.
          </p>
        )}
        {!canPlugInAgain() && (
          <p class="bad">
            This Excel has no notes, which would keep the GYLE formulas: the copy calculates, but nobody can plug it in again. An Excel that
            has them (Microsoft 365, or Excel on the web) makes copies that can be.
          </p>
        )}
        <button type="submit" class="main-action" disabled={busy}>
          {busy ? "Copying…" : "Make the unplugged copy"}
        </button>
      </form>
      <WorkProgress label="Unplugging" work={work} />
      <UnplugResult outcome={outcome} />
      <PlugIn />
    </section>
  );
}
