import { download } from "../files/download";
import { xlsxType } from "../files/commands";
import { fileNameFor } from "../naming/file-name";
import type { Session } from "../session";
import { showNotice, showStatus } from "../words/notices";

/**
 * Saves what anybody can open: an unplugged copy of every sheet that shows, in a workbook of its own, without prices and private notes.
 * For a moment the copies stand in the open workbook, which is as before afterwards.
 */
export async function saveForEveryone(session: Session): Promise<void> {
  await session.endTyping();
  await session.engine.calculated();
  const { edited } = session;
  const workbook = session.engine.univerAPI.getActiveWorkbook()!;
  const front = workbook.getActiveSheet();
  const names = workbook
    .getSheets()
    .filter((sheet) => !sheet.isSheetHidden())
    .map((sheet) => sheet.getSheetName());
  showStatus("making a copy for everyone…");
  try {
    const { unpluggedWorkbook } = await import(
      /* webpackChunkName: "new-workbook" */ "../../../workbook/exchange/unplug/new-workbook/new-workbook"
    );
    let bytes: Uint8Array<ArrayBuffer> | undefined;
    const copies = await Excel.run({ delayForCellEdit: true }, (context) =>
      unpluggedWorkbook(context, names, { prices: false }, (file) => Promise.resolve((bytes = bytesOf(file))), {
        onProgress: ({ done, total, unit }) => showStatus(`making a copy for everyone: ${unit} ${Math.min(done + 1, total)} of ${total}`),
      }),
    );
    download(bytes!, `${fileNameFor(session.name)} for everyone.xlsx`, xlsxType);
    const values = copies.reduce((sum, copy) => sum + copy.values.length, 0);
    showNotice({
      text: `Saved for everyone: any spreadsheet program shows this file and calculates on. Prices and private notes stayed behind${values === 0 ? "" : `; ${values} ${values === 1 ? "cell is a value now and does" : "cells are values now and do"} not follow changes`}.`,
    });
    showStatus("saved for everyone");
  } catch (problem) {
    console.error(problem);
    showStatus("");
    showNotice({
      kind: "warning",
      text: `The copy for everyone could not be made: ${problem instanceof Error ? problem.message : String(problem)}`,
    });
  } finally {
    workbook.setActiveSheet(front);
    if (!edited) session.forgetEdits();
  }
}

const bytesOf = (base64: string): Uint8Array<ArrayBuffer> => Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
