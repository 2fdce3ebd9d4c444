import { useEffect, useState } from "preact/hooks";
import type { BatchContents } from "../../workbook/batch/contents";
import { readBatchFile } from "../../workbook/exchange/batch-file/read-batch-file";
import { BatchFileRefused } from "../../workbook/exchange/batch-file/refused";
import { addToClub, insertClub } from "../../workbook/sheets/club/add-to-club";
import type { ClubEntry } from "../../workbook/sheets/club/club-facts";
import { mostBatches } from "../../workbook/sheets/club/club-plan";
import { clubSheets } from "../../workbook/sheets/club/club-sheet";
import { replaceOnClub, standingOnClub, type Standing } from "../../workbook/sheets/club/replace-on-club";
import { ChoiceField } from "../new-batch/choice-field";
import { firstUnits } from "../parts/first-units";
import { TextField } from "../new-batch/text-field";
import { inWorkbook, type Done } from "../sheets/in-workbook";
import { Outcome } from "../sheets/outcome";
import { useBatches } from "../sheets/use-batches";
import { OpenedFiles, type OpenedText } from "./opened-files";
import { Replacements } from "./replacements";

interface Collected {
  readonly key: number;
  readonly member: string;
  readonly batch: BatchContents;
  readonly from: string;
}

/** Batches that stand on the sheet already, told before anything is written. */
interface Asking {
  readonly target: string;
  readonly entries: readonly ClubEntry[];
  readonly standing: readonly Standing[];
}

const newSheet = "a new sheet";

/** Several members' batches side by side. */
export function Club() {
  const batches = useBatches();
  const [collected, setCollected] = useState<readonly Collected[]>([]);
  const [refusals, setRefusals] = useState<readonly string[]>([]);
  const [there, setThere] = useState<readonly string[]>([]);
  const [target, setTarget] = useState(newSheet);
  const [sheetName, setSheetName] = useState("Club");
  const [units, setUnits] = useState(firstUnits);
  const [busy, setBusy] = useState(false);
  const [outcome, setOutcome] = useState<Done<string>>();
  const [asked, setAsked] = useState(false);
  const [asking, setAsking] = useState<Asking>();

  const lookForClubs = async () => {
    const found = await inWorkbook("The workbook could not be read.", clubSheets);
    if (found.kind !== "done") return;
    const names = found.result.map((sheet) => sheet.sheetName);
    setThere(names);
    setTarget((before) => (names.includes(before) ? before : (names[0] ?? newSheet)));
  };
  useEffect(() => {
    void lookForClubs();
  }, []);
  // What was told holds for the batches and the sheet that were chosen then.
  useEffect(() => setAsking(undefined), [collected, target]);

  const collect = (batch: BatchContents, from: string) =>
    setCollected((before) => [...before, { key: (before.at(-1)?.key ?? 0) + 1, member: "", batch, from }]);
  const take = (texts: readonly OpenedText[]) => {
    setRefusals([]);
    setOutcome(undefined);
    for (const { name, text } of texts) {
      try {
        collect(readBatchFile(text), name);
      } catch (problem) {
        setRefusals((before) => [...before, `${name}: ${problem instanceof BatchFileRefused ? problem.message : "it cannot be read."}`]);
      }
    }
  };
  const change = (key: number, member: string) =>
    setCollected((before) => before.map((one) => (one.key === key ? { ...one, member } : one)));
  const nameless = collected.filter(({ member }) => member.trim() === "");

  const write = async (name: string) => {
    setAsked(true);
    if (nameless.length > 0 || collected.length === 0) return;
    const entries = collected.map(({ member, batch }) => ({ member: member.trim(), batch }));
    await writing(async (context) => {
      if (target === newSheet) {
        await insertClub(context, { sheetName: name, units, entries });
        return name;
      }
      const standing = await standingOnClub(context, target, entries);
      if (standing.length > 0) return { target, entries, standing };
      await addToClub(context, target, entries);
      return target;
    });
  };

  /** Writes, or comes back with what has to be asked first. */
  const writing = async (action: (context: Excel.RequestContext) => Promise<string | Asking>) => {
    setBusy(true);
    const done = await inWorkbook("The club sheet was not written, and the workbook is as it was.", action);
    setBusy(false);
    setAsking(done.kind === "done" && typeof done.result !== "string" ? done.result : undefined);
    setOutcome(done.kind === "done" ? (typeof done.result === "string" ? { kind: "done", result: done.result } : undefined) : done);
    if (done.kind !== "done" || typeof done.result !== "string") return;
    setCollected([]);
    setAsked(false);
    await lookForClubs();
  };

  return (
    <section class="screen" aria-labelledby="club-title">
      <h1 id="club-title">Club</h1>
      <p class="lead">Members' batches side by side: planned, reached, tasted. Up to {mostBatches} on a sheet.</p>
      <OpenedFiles
        id="club"
        label="Batch files of the members"
        accept=".json,application/json"
        multiple
        pasteLabel="Or paste the text of one"
        pasteAction="Take what is pasted"
        onTexts={take}
      />
      {batches.workbook && batches.workbook.batches.length > 0 && (
        <p class="additions">
          {batches.workbook.batches.map(({ sheetName: name, contents }) => (
            <button key={name} type="button" class="quiet" onClick={() => collect(contents, "this workbook")}>
              Add “{name}” of this workbook
            </button>
          ))}
        </p>
      )}
      {refusals.map((refusal) => (
        <p key={refusal} class="bad" role="alert">
          {refusal}
        </p>
      ))}
      {collected.map(({ key, member, batch, from }) => (
        <div key={key} class="collected">
          <TextField
            id={`member-${key}`}
            label={`Whose is “${batch.batchName || "a batch without a name"}”?`}
            value={member}
            hint={`From ${from}.`}
            problem={asked && member.trim() === "" ? "The member's name, please: the file does not say it." : undefined}
            onInput={(typed) => change(key, typed)}
          />
          <button type="button" class="quiet" onClick={() => setCollected((before) => before.filter((one) => one.key !== key))}>
            Leave it out
          </button>
        </div>
      ))}
      {there.length > 0 && (
        <div class="field">
          <label for="club-target">Onto</label>
          <select id="club-target" value={target} onChange={(event) => setTarget(event.currentTarget.value)}>
            {there.map((name) => (
              <option key={name} value={name}>
                {name}
              </option>
            ))}
            <option value={newSheet}>{newSheet}</option>
          </select>
        </div>
      )}
      {target === newSheet && (
        <>
          <TextField id="club-name" label="Name of the club sheet" value={sheetName} onInput={setSheetName} />
          <ChoiceField
            legend="Units of the club sheet"
            name="club-units"
            value={units}
            choices={[
              ["metric", "Metric: L, EBC"],
              ["us", "US: gal, SRM"],
            ]}
            onChange={setUnits}
          />
        </>
      )}
      <button type="button" class="main-action" disabled={busy || collected.length === 0} onClick={() => void write(sheetName.trim())}>
        {busy ? "Writing…" : target === newSheet ? "Write the club sheet" : `Add to “${target}”`}
      </button>
      {asking && (
        <Replacements
          standing={asking.standing}
          others={asking.entries.length - asking.standing.length}
          busy={busy}
          onAgreed={() =>
            void writing(async (context) => {
              await replaceOnClub(context, asking.target, asking.entries, asking.standing);
              return asking.target;
            })
          }
        />
      )}
      <Outcome outcome={outcome} onFreeName={(free) => void write(free)}>
        {(name) => <p>“{name}” has them now.</p>}
      </Outcome>
    </section>
  );
}
