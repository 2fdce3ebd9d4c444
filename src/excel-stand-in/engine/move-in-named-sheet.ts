import { ICommandService, Workbook, type Injector, type Worksheet } from "@univerjs/core";
import {
  DeleteRangeMoveLeftCommand,
  DeleteRangeMoveUpCommand,
  InsertColByRangeCommand,
  InsertColCommand,
  InsertRangeMoveDownCommand,
  InsertRangeMoveRightCommand,
  InsertRowByRangeCommand,
  InsertRowCommand,
  MoveColsCommand,
  MoveRowsCommand,
  RemoveColByRangeCommand,
  RemoveColCommand,
  RemoveRowByRangeCommand,
  RemoveRowCommand,
} from "@univerjs/sheets";

/** Commands that move cells, and with them what formulas, tables, names, rules and notes refer to. */
const movesCells = new Set(
  [
    [InsertRowCommand, InsertRowByRangeCommand, InsertColCommand, InsertColByRangeCommand, InsertRangeMoveDownCommand],
    [InsertRangeMoveRightCommand, RemoveRowCommand, RemoveRowByRangeCommand, RemoveColCommand, RemoveColByRangeCommand],
    [DeleteRangeMoveUpCommand, DeleteRangeMoveLeftCommand, MoveRowsCommand, MoveColsCommand],
  ].flatMap((commands) => commands.map(({ id }) => id)),
);

interface NamedSheet {
  unitId?: string;
  subUnitId?: string;
}

let meant: NamedSheet | undefined;
let isRepaired = false;

/**
 * A command that moves cells may name its sheet, but the grid asks the sheet in front what is to follow: rows deleted on another
 * sheet, as a program does it, changed the formulas that read the sheet in front, and left those alone that read the rows; whole
 * columns and blocks were taken out of the sheet in front. While such a command looks for what it has to do, its own sheet
 * counts as the one in front; what it then does knows its sheet by itself, and what is drawn follows that.
 */
export function moveInNamedSheet(injector: Injector): void {
  answerForNamedSheet();
  const service = injector.get(ICommandService);
  const within = <Answer>(id: string, params: NamedSheet | undefined, run: () => Answer): Answer => {
    const before = meant;
    meant = movesCells.has(id) ? params : undefined;
    try {
      return run();
    } finally {
      meant = before;
    }
  };
  const execute = service.executeCommand.bind(service);
  // What comes after the first wait of a command is another command, which names the sheet again.
  service.executeCommand = (id, params, options) => within(id, params, () => execute(id, params, options));
  const executeAtOnce = service.syncExecuteCommand.bind(service);
  service.syncExecuteCommand = (id, params, options) => within(id, params, () => executeAtOnce(id, params, options));
}

/** One repair for all workbooks of the process. */
function answerForNamedSheet(): void {
  if (isRepaired) return;
  isRepaired = true;
  const prototype = Workbook.prototype as { getActiveSheet(allowNull?: boolean): Worksheet };
  const inFront = prototype.getActiveSheet;
  prototype.getActiveSheet = function (this: Workbook, allowNull?: boolean): Worksheet {
    const named = meant?.subUnitId !== undefined && (meant.unitId ?? this.getUnitId()) === this.getUnitId();
    return (named ? this.getSheetBySheetId(meant!.subUnitId!) : undefined) ?? inFront.call(this, allowNull);
  };
}
