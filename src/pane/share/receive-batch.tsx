import { useState } from "preact/hooks";
import type { BatchContents } from "../../workbook/batch/contents";
import { unitWords } from "../../workbook/batch/unit-words";
import { placeFor } from "../../workbook/sheets/batch-to-share";
import { readBatchFile } from "../../workbook/exchange/batch-file/read-batch-file";
import { BatchFileRefused } from "../../workbook/exchange/batch-file/refused";
import { plannedFigures } from "../../workbook/batch/figures/planned-figures";
import { insertBatch } from "../../workbook/batch/insert-batch";
import { inWorkbook, type Done } from "../sheets/in-workbook";
import { Outcome } from "../sheets/outcome";
import type { Batches } from "../sheets/use-batches";
import { OpenedFiles, type OpenedText } from "./opened-files";

interface Opened {
  readonly contents: BatchContents;
  readonly sheetName: string;
  readonly hereAlready: string | undefined;
}

/** Takes a batch file in: shows what is in it first, and never writes over anything. */
export function ReceiveBatch({ batches }: { readonly batches: Batches }) {
  const [opened, setOpened] = useState<Opened>();
  const [refusal, setRefusal] = useState<string>();
  const [outcome, setOutcome] = useState<Done<string>>();
  const [busy, setBusy] = useState(false);

  const look = async ([file]: readonly OpenedText[]) => {
    setOpened(undefined);
    setOutcome(undefined);
    setRefusal(undefined);
    if (!file) return;
    try {
      const contents = readBatchFile(file.text);
      const workbook = await batches.refresh();
      if (workbook) setOpened({ contents, ...placeFor(contents, workbook) });
    } catch (problem) {
      setRefusal(`${problem instanceof BatchFileRefused ? problem.message : "This file cannot be read."} Nothing was written.`);
    }
  };

  const write = async (sheetName: string) => {
    if (!opened) return;
    setBusy(true);
    const done = await inWorkbook("The batch was not written, and the workbook is as it was.", async (context) => {
      await insertBatch(context, { ...opened.contents, sheetName });
      return sheetName;
    });
    setBusy(false);
    setOutcome(done);
    if (done.kind === "done") setOpened(undefined);
    await batches.refresh();
  };

  return (
    <>
      <OpenedFiles
        id="batch-file"
        label="Batch file"
        accept=".json,application/json"
        pasteLabel="Or paste its text"
        pasteAction="Read the pasted text"
        onTexts={(texts) => void look(texts)}
      />
      {refusal && (
        <p class="bad" role="alert">
          {refusal}
        </p>
      )}
      {opened && (
        <>
          <FileFigures contents={opened.contents} />
          {opened.hereAlready !== undefined && (
            <p class="bad">
              This very batch is in the workbook already, on “{opened.hereAlready}”. It stays as it is; the file's can go on a second sheet.
            </p>
          )}
          <button type="button" class="main-action" disabled={busy} onClick={() => void write(opened.sheetName)}>
            {opened.hereAlready === undefined
              ? `Put it on a sheet “${opened.sheetName}”`
              : `Put it on a second sheet “${opened.sheetName}”`}
          </button>
        </>
      )}
      <Outcome outcome={outcome} onFreeName={(free) => void write(free)}>
        {(sheetName) => <p>“{sheetName}” is in the workbook.</p>}
      </Outcome>
    </>
  );
}

function FileFigures({ contents }: { readonly contents: BatchContents }) {
  const { og, abv, ibu, colour } = plannedFigures(contents);
  const words = unitWords(contents.units);
  const rows: readonly (readonly [string, string])[] = [
    ["Batch", contents.batchName || "without a name"],
    ["Style", contents.style || "–"],
    ["Volume", `${Number(contents.volume.toFixed(2))} ${words.volume}`],
    ["Original gravity, planned", og?.toFixed(3) ?? "–"],
    ["Alcohol, planned", abv === undefined ? "–" : `${abv.toFixed(1)} %`],
    ["Bitterness, planned", ibu === undefined ? "–" : `${ibu.toFixed(0)} IBU`],
    ["Colour, planned", colour === undefined ? "–" : `${colour.toFixed(1)} ${words.colour}`],
    ["Readings", String(contents.readings.length)],
  ];
  return (
    <table class="figures">
      <caption>In the file</caption>
      <tbody>
        {rows.map(([label, value]) => (
          <tr key={label}>
            <th scope="row">{label}</th>
            <td>{value}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
