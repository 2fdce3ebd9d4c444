import { afterEach, describe, expect, it } from "vitest";
import type { HeadlessBench } from "../../src/excel-stand-in/headless";
import { openWorkbook, saveWorkbook, type OpenedWorkbook } from "../../src/excel-stand-in/xlsx";
import { makeWorkbook } from "../../src/build/make-sample";
import { sharedBatch } from "../../src/build/sample-unplugged";
import { firstExtractBatch } from "../../src/workbook/batch/example-batch";
import type { BatchContents } from "../../src/workbook/batch/contents";
import { handOut, type HandOutChoices } from "../../src/workbook/sheets/handout/hand-out";
import { insertUnpluggedHandOut } from "../../src/workbook/sheets/handout/unplugged-hand-out";
import { openUnpluggedHandOut } from "../../src/workbook/sheets/handout/unplugged-workbook";
import { deleteSheets } from "../../src/workbook/exchange/unplug";
import { loadHeadlessBench } from "../support/headless-bench";
import { compared, shownByLibreOffice, shownByUs, soffice } from "../support/libre-office";

/** The sample batches, each for members who brew another volume in the other units. */
const handOuts: readonly (readonly [string, () => BatchContents, Omit<HandOutChoices, "name" | "brewedOn">])[] = [
  ["the first extract batch, in metric units", firstExtractBatch, { volume: 10, units: "metric", prices: false }],
  ["a mashed batch of the season, in US units with its prices", sharedBatch, { volume: 3, units: "us", prices: true }],
];
const patience = 240_000;

let bench: HeadlessBench | undefined;
afterEach(() => bench?.dispose());

describe.skipIf(!soffice).each(handOuts)("a hand-out of %s for a member without the add-in", (_name, batch, choices) => {
  const blank = (): BatchContents => handOut(batch(), { ...choices, name: "For the club", brewedOn: 46400 });

  /** LibreOffice gets the formulas alone, without a result. */
  const agrees = async (made: Pick<OpenedWorkbook, "snapshot" | "computed">) => {
    const { snapshot } = made;
    expect(snapshot.sheetOrder.map((id) => snapshot.sheets[id]?.name)).toEqual(["For the club"]);
    const { numbers, texts, different } = compared(shownByUs(made), shownByLibreOffice(await saveWorkbook(snapshot, {}, undefined, {})));
    expect(different).toEqual([]);
    expect(numbers).toBeGreaterThan(100);
    expect(texts).toBeGreaterThan(200);
  };

  it(
    "on a sheet of this workbook calculates in LibreOffice to what we show",
    async () => {
      const made = await makeWorkbook(await loadHeadlessBench(), [batch()], async (context) => {
        await insertUnpluggedHandOut(context, blank());
        await deleteSheets(context, [batch().sheetName]);
      });
      bench = made.bench;
      await agrees(made);
    },
    patience,
  );

  it(
    "in a workbook of its own calculates in LibreOffice to what the file says",
    async () => {
      const files: Uint8Array[] = [];
      const made = await makeWorkbook(await loadHeadlessBench(), [batch()], async (context) => {
        await openUnpluggedHandOut(context, blank(), (base64) =>
          Promise.resolve(files.push(new Uint8Array(Buffer.from(base64, "base64")))),
        );
      });
      bench = made.bench;
      await agrees(await openWorkbook(files[0]!, {}));
    },
    patience,
  );
});
