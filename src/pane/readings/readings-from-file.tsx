import { useMemo, useState } from "preact/hooks";
import { readLog } from "../../workbook/exchange/readings-file/read-log";
import { wallClockHere } from "../../workbook/exchange/readings-file/read-moment";
import { CommasUnsure, parseTable, TableRefused, type TextTable } from "../../workbook/exchange/readings-file/parse-table";
import { recognise, type LogChoices, type Recognised } from "../../workbook/exchange/readings-file/recognise";
import { BatchChoice } from "../sheets/batch-choice";
import { useBatches, type Batches } from "../sheets/use-batches";
import { OpenedFiles, type OpenedText } from "../share/opened-files";
import { ColumnChoices } from "./column-choices";
import { CommaChoice } from "./comma-choice";
import { LogResult } from "./log-result";

/** Gravities that a device has kept, read from its table. */
export function ReadingsFromFile() {
  const batches = useBatches();
  const [opened, setOpened] = useState<{ readonly name: string; readonly table: TextTable; readonly recognised: Recognised }>();
  const [refusal, setRefusal] = useState<string>();
  const [unsure, setUnsure] = useState<{ readonly name: string; readonly commas: CommasUnsure }>();
  const show = (name: string, table: TextTable) => setOpened({ name, table, recognised: recognise(table) });
  const take = ([file]: readonly OpenedText[]) => {
    if (!file) return;
    setOpened(undefined);
    setRefusal(undefined);
    setUnsure(undefined);
    try {
      show(file.name, parseTable(file.text));
    } catch (problem) {
      if (problem instanceof CommasUnsure) setUnsure({ name: file.name, commas: problem });
      else setRefusal(problem instanceof TableRefused ? problem.message : "This file cannot be read as a table.");
    }
  };
  return (
    <section class="screen" aria-labelledby="readings-title">
      <h1 id="readings-title">Readings from a file</h1>
      <p class="lead">
        Gravities and temperatures with their dates, as a device keeps them. You confirm what the columns mean before anything is written.
      </p>
      <BatchChoice batches={batches} />
      <OpenedFiles
        id="log"
        label="Table of readings (CSV)"
        accept=".csv,.txt,.tsv,text/csv,text/plain"
        pasteLabel="Or paste its lines"
        pasteAction="Read the pasted lines"
        onTexts={take}
      />
      {refusal && (
        <p class="bad" role="alert">
          {refusal}
        </p>
      )}
      {unsure && <CommaChoice key={unsure.name} commas={unsure.commas} onTable={(table) => show(unsure.name, table)} />}
      {opened && (
        <Confirmed
          key={`${opened.name} ${opened.table.rows.length} ${opened.table.rows[0]?.join("|")}`}
          batches={batches}
          table={opened.table}
          recognised={opened.recognised}
        />
      )}
    </section>
  );
}

function Confirmed({
  batches,
  table,
  recognised,
}: {
  readonly batches: Batches;
  readonly table: TextTable;
  readonly recognised: Recognised;
}) {
  const [choices, setChoices] = useState<LogChoices>(recognised.choices);
  const ready = choices.when >= 0 && choices.gravity >= 0;
  const log = useMemo(() => (ready ? readLog(table, choices, wallClockHere) : undefined), [table, choices, ready]);
  return (
    <>
      <ColumnChoices
        table={table}
        choices={choices}
        orderMatters={recognised.orderMatters}
        orderUnsure={recognised.orderUnsure}
        onChange={(part) => setChoices((before) => ({ ...before, ...part }))}
      />
      {!ready && <p class="bad">Say which column holds the time, and which the gravity.</p>}
      {log && <LogResult batches={batches} log={log} corrected={choices.corrected} />}
    </>
  );
}
