import {
  IUniverInstanceService,
  UniverInstanceType,
  type ICommandInfo,
  type IMutationInfo,
  type Injector,
  type Workbook,
} from "@univerjs/core";
import { IDefinedNamesService, SetDefinedNameMutation } from "@univerjs/engine-formula";
import { RemoveDefinedNameCommand, SetDefinedNameCommand, SetRangeValuesMutation } from "@univerjs/sheets";
import { UpdateFormulaController } from "@univerjs/sheets-formula";
import { splitFormula } from "./formula-text";
import { localVariables } from "./local-variables";
import { scopeOf } from "./name-scope";
import type { ScopedNames } from "./scoped-names";

interface Mutations {
  redos: IMutationInfo[];
  undos: IMutationInfo[];
}
interface Rewriting {
  _getUpdateFormula(command: ICommandInfo): Mutations;
}
interface ChangedName {
  unitId: string;
  id: string;
  name: string;
}

/**
 * When a name is renamed or deleted the grid changes every formula in which it finds that spelling, also on sheets
 * that mean a name of their own by it, and misses other capitals and names written with their sheet. Here a renamed
 * name is followed by the formulas that mean it, those of other names too. A deleted one leaves formulas as they are, and they say #NAME?, as in Excel.
 */
export function renameNames(injector: Injector, names: ScopedNames): void {
  const controller = injector.get(UpdateFormulaController) as unknown as Rewriting;
  if (typeof controller._getUpdateFormula !== "function")
    throw new Error("The grid's formulas have changed: names are renamed elsewhere now.");
  const update = controller._getUpdateFormula.bind(controller);
  controller._getUpdateFormula = (command) => {
    if (command.id === RemoveDefinedNameCommand.id) return { redos: [], undos: [] };
    return command.id === SetDefinedNameCommand.id ? renamed(injector, names, command.params as ChangedName) : update(command);
  };
}

function renamed(injector: Injector, names: ScopedNames, { unitId, id, name }: ChangedName): Mutations {
  const workbook = injector.get(IUniverInstanceService).getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET);
  const before = injector.get(IDefinedNamesService).getValueById(unitId, id);
  const mutations: Mutations = { redos: [], undos: [] };
  if (!workbook || !before || before.name === name) return mutations;
  for (const sheet of workbook.getSheets()) {
    const subUnitId = sheet.getSheetId();
    const [after, earlier]: Record<number, Record<number, { f: string }>>[] = [{}, {}];
    sheet.getCellMatrix().forValue((row, column, cell) => {
      const formula = cell?.f ?? "";
      if (!formula.toLowerCase().includes(before.name.toLowerCase())) return;
      const changed = inFormula(
        formula,
        before.name,
        name,
        (sheetName) => names.find(unitId, subUnitId, before.name, sheetName)?.id === id,
      );
      if (changed === formula) return;
      (after![row] ??= {})[column] = { f: changed };
      (earlier![row] ??= {})[column] = { f: formula };
    });
    if (Object.keys(after!).length === 0) continue;
    const write = (cellValue: unknown): IMutationInfo => ({ id: SetRangeValuesMutation.id, params: { unitId, subUnitId, cellValue } });
    mutations.redos.push(write(after));
    mutations.undos.push(write(earlier));
  }
  for (const other of Object.values(injector.get(IDefinedNamesService).getDefinedNameMap(unitId) ?? {})) {
    const changed = inFormula(
      other.formulaOrRefString,
      before.name,
      name,
      (sheetName) => names.find(unitId, scopeOf(other) ?? "", before.name, sheetName)?.id === id,
    );
    if (other.id === id || changed === other.formulaOrRefString) continue;
    const write = (formulaOrRefString: string): IMutationInfo => ({
      id: SetDefinedNameMutation.id,
      params: { ...other, unitId, formulaOrRefString },
    });
    mutations.redos.push(write(changed));
    mutations.undos.push(write(other.formulaOrRefString));
  }
  return mutations;
}

/** @param means whether the spelling means this name, written with a sheet's name before it or without */
function inFormula(formula: string, from: string, to: string, means: (sheetName: string | undefined) => boolean): string {
  const pieces = splitFormula(formula);
  const local = localVariables(pieces);
  return pieces
    .map((piece) => {
      if (piece.kind !== "name" || piece.name.toLowerCase() !== from.toLowerCase()) return piece.source;
      if ((piece.sheet === undefined && local.has(from.toLowerCase())) || !means(piece.sheet)) return piece.source;
      return piece.source.slice(0, piece.source.length - piece.name.length) + to;
    })
    .join("");
}
