import type { IRange } from "@univerjs/core";
import {
  InsertColMutation,
  InsertRowMutation,
  RemoveColMutation,
  RemoveRowMutation,
  SetRangeValuesMutation,
  type IInsertRowMutationParams,
  type ISetRangeValuesMutationParams,
} from "@univerjs/sheets";
import { changesLooksOnly } from "../engine/calculation";
import { columnLetters } from "../xlsx/addresses";
import type { Command, EventSource } from "./events";
import { blockAddress } from "./sheet-events";

type ChangeType = "RangeEdited" | "RowInserted" | "RowDeleted" | "ColumnInserted" | "ColumnDeleted";

export interface ChangedArguments {
  type: "WorksheetChanged";
  worksheetId: string;
  address: string;
  changeType: ChangeType;
  source: "Local";
}

const structure: Partial<Record<string, { changeType: ChangeType; address(range: IRange): string }>> = {
  [InsertRowMutation.id]: { changeType: "RowInserted", address: rows },
  [RemoveRowMutation.id]: { changeType: "RowDeleted", address: rows },
  [InsertColMutation.id]: { changeType: "ColumnInserted", address: columns },
  [RemoveColMutation.id]: { changeType: "ColumnDeleted", address: columns },
};

/** What somebody, or a program, entered, inserted or deleted; never the results of formulas. */
export const sheetChanged: EventSource<ChangedArguments> = {
  after: (_host, command, options) => {
    if (options?.onlyLocal) return [];
    const changed = structure[command.id];
    if (changed) {
      const { subUnitId, range } = command.params as IInsertRowMutationParams;
      return [changedArguments(subUnitId, changed.changeType, changed.address(range))];
    }
    if (command.id !== SetRangeValuesMutation.id || changesLooksOnly(command) || followsStructure(command)) return [];
    const { subUnitId, cellValue } = command.params as ISetRangeValuesMutationParams;
    const address = blockAddress(cellValue as Record<string, Record<string, unknown>> | undefined);
    return address === undefined ? [] : [changedArguments(subUnitId, "RangeEdited", address)];
  },
};

/** The grid rewrites formulas whose cells moved; for Excel that is no edit. */
const followsStructure = (command: Command): boolean =>
  /^sheet\.command\.(?:insert-|remove-|delete-range|move-range|set-worksheet-name)/u.test(
    (command.params as { trigger?: string }).trigger ?? "",
  );

function rows({ startRow, endRow }: IRange): string {
  return `${startRow + 1}:${endRow + 1}`;
}
function columns({ startColumn, endColumn }: IRange): string {
  return `${columnLetters(startColumn)}:${columnLetters(endColumn)}`;
}

function changedArguments(worksheetId: string, changeType: ChangeType, address: string): ChangedArguments {
  return { type: "WorksheetChanged", worksheetId, address, changeType, source: "Local" };
}
