import { blockKeys, type BlockKey } from "../../workbook/batch/fields/blocks";
import { addBlocks, type AddedBlocks } from "../../workbook/care/grow/add-blocks";
import { inWorkbook, type Done } from "../sheets/in-workbook";

/** Adds what was ticked, in the order of a new sheet, and tells how it went. */
export const growSheet = (sheetName: string, chosen: readonly BlockKey[]): Promise<Done<AddedBlocks>> =>
  inWorkbook("Nothing was added, and the sheet is as it was.", (context) =>
    addBlocks(
      context,
      sheetName,
      blockKeys.filter((key) => chosen.includes(key)),
    ),
  );
