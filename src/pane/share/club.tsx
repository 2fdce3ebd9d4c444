import { useEffect, useState } from "preact/hooks";
import type { BatchContents } from "../../workbook/batch/contents";
import { readBatchFile } from "../../workbook/exchange/batch-file/read-batch-file";
import { BatchFileRefused } from "../../workbook/exchange/batch-file/refused";
import { addToClub, insertClub, insertLarger } from "../../workbook/sheets/club/add-to-club";
import type { ClubEntry } from "../../workbook/sheets/club/club-facts";
import { clubSheets, NoRoom, type ClubKind } from "../../workbook/sheets/club/club-sheet";
import { mostBatches } from "../../workbook/sheets/club/facts-plan";
import { replaceOnClub, standingOnClub, type Standing } from "../../workbook/sheets/club/replace-on-club";
import { ChoiceField } from "../fields/choice-field";
import { firstUnits } from "../parts/first-units";
import { TextField } from "../fields/text-field";
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

/** A full sheet, and what was to go onto it. */
interface Full {
  readonly target: string;
  readonly entries: readonly ClubEntry[];
  readonly words: string;
}

const newSheet = "a new sheet";
const usualNames: Readonly<Record<ClubKind, string>> = { club: "Club", class: "Class" };

/** Two files that say the same of the same batch. Of one blank several learners have batches, which differ. */
const isSame = (one: BatchContents, other: BatchContents): boolean =>
  one.id !== "" && one.id === other.id && JSON.stringify(one) === JSON.stringify(other);

/** Several members' batches side by side, or what a class predicted and measured. */
export function Club() {
  const batches = useBatches();
  const [collected, setCollected] = useState<readonly Collected[]>([]);
  const [refusals, setRefusals] = useState<readonly string[]>([]);
  const [there, setThere] = useState<readonly string[]>([]);
  const [target, setTarget] = useState(newSheet);
  const [kind, setKind] = useState<ClubKind>("club");
  const [sheetName, setSheetName] = useState<string>();
  const [units, setUnits] = useState(firstUnits);
  const [busy, setBusy] = useState(false);
  const [outcome, setOutcome] = useState<Done<string>>();
  const [asked, setAsked] = useState(false);
  const [asking, setAsking] = useState<Asking>();
  const [full, setFull] = useState<Full>();

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
  useEffect(() => {
    setAsking(undefined);
    setFull(undefined);
  }, [collected, target]);

  const add = (given: readonly { readonly name: string; readonly read: () => BatchContents }[]) => {
    setOutcome(undefined);
    const list = [...collected];
    const problems: string[] = [];
    for (const { name, read } of given) {
      try {
        const batch = read();
        const twin = list.find((one) => isSame(one.batch, batch));
        if (twin) problems.push(`${name}: “${batch.batchName}” is on the list already, from ${twin.from}. It was not added twice.`);
        else list.push({ key: (list.at(-1)?.key ?? 0) + 1, member: "", batch, from: name });
      } catch (problem) {
        problems.push(`${name}: ${problem instanceof BatchFileRefused ? problem.message : "it cannot be read."}`);
      }
    }
    setRefusals(problems);
    setCollected(list);
  };
  const take = (texts: readonly OpenedText[]) => add(texts.map(({ name, text }) => ({ name, read: () => readBatchFile(text) })));
  const change = (key: number, member: string) =>
    setCollected((before) => before.map((one) => (one.key === key ? { ...one, member } : one)));
  const nameless = collected.filter(({ member }) => member.trim() === "");

  const name = sheetName ?? usualNames[kind];
  const write = async (name: string) => {
    setAsked(true);
    if (nameless.length > 0 || collected.length === 0) return;
    const entries = collected.map(({ member, batch }) => ({ member: member.trim(), batch }));
    await writing(async (context) => {
      if (target === newSheet) {
        await insertClub(context, { sheetName: name, units, entries, kind });
        return name;
      }
      const standing = await standingOnClub(context, target, entries);
      if (standing.length > 0) return { target, entries, standing };
      try {
        await addToClub(context, target, entries);
      } catch (problem) {
        if (problem instanceof NoRoom && problem.largerWouldDo) return { target, entries, words: problem.message };
        throw problem;
      }
      return target;
    });
  };

  /** Writes, or comes back with what has to be asked first. */
  const writing = async (action: (context: Excel.RequestContext) => Promise<string | Asking | Full>) => {
    setBusy(true);
    const done = await inWorkbook("The club sheet was not written, and the workbook is as it was.", action);
    setBusy(false);
    const asked = done.kind === "done" && typeof done.result !== "string" ? done.result : undefined;
    setAsking(asked && "standing" in asked ? asked : undefined);
    setFull(asked && "words" in asked ? asked : undefined);
    setOutcome(done.kind === "done" ? (typeof done.result === "string" ? { kind: "done", result: done.result } : undefined) : done);
    if (done.kind !== "done" || typeof done.result !== "string") return;
    setCollected([]);
    setAsked(false);
    await lookForClubs();
  };

  return (
    <section class="screen" aria-labelledby="club-title">
      <h1 id="club-title">Club</h1>
      <p class="lead">Members' batches side by side, or what a class predicted beside what it measured. Up to {mostBatches} on a sheet.</p>
      <OpenedFiles
        id="club"
        label="Batch files of the members"
        accept=".json,application/json"
        multiple
        pasteLabel="Or paste the text of one"
        pasteAction="Use the pasted text"
        onTexts={take}
      />
      {batches.workbook && batches.workbook.batches.length > 0 && (
        <details class="field" open={batches.workbook.batches.length <= 4}>
          <summary>Batches of this workbook</summary>
          <div class="additions">
            {batches.workbook.batches.map(({ sheetName: name, contents }) => (
              <button key={name} type="button" class="quiet" onClick={() => add([{ name: "this workbook", read: () => contents }])}>
                Add “{name}” of this workbook
              </button>
            ))}
          </div>
        </details>
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
          <ChoiceField
            legend="As"
            name="club-kind"
            value={kind}
            choices={[
              ["club", "A club's table: planned, reached and tasted, side by side"],
              ["class", "A class: predicted and measured, learner by learner"],
            ]}
            onChange={setKind}
          />
          <TextField id="club-name" label={`Name of the ${kind} sheet`} value={name} onInput={setSheetName} />
          <ChoiceField
            legend={`Units of the ${kind} sheet`}
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
      <button type="button" class="main-action" disabled={busy || collected.length === 0} onClick={() => void write(name.trim())}>
        {busy ? "Writing…" : target === newSheet ? `Write the ${kind} sheet` : `Add to “${target}”`}
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
      {full && (
        <div class="note" role="status">
          <p>{full.words}</p>
          <button type="button" disabled={busy} onClick={() => void writing((context) => insertLarger(context, full.target, full.entries))}>
            Make a larger copy with all of them
          </button>
          <p class="hint">“{full.target}” stays as it is; delete it when you no longer need it.</p>
        </div>
      )}
      <Outcome outcome={outcome} onFreeName={(free) => void write(free)}>
        {(name) => <p>They are on “{name}” now.</p>}
      </Outcome>
    </section>
  );
}
