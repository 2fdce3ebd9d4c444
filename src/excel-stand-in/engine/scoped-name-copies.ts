import {
  CommandType,
  generateRandomId,
  ICommandService,
  IUniverInstanceService,
  UniverInstanceType,
  type IMutation,
  type IMutationInfo,
  type Injector,
  type Workbook,
} from "@univerjs/core";
import { IDefinedNamesService, RemoveDefinedNameMutation, SetDefinedNameMutation } from "@univerjs/engine-formula";
import { CopySheetCommand, RemoveSheetCommand, SheetInterceptorService } from "@univerjs/sheets";
import { renameSheet } from "./formula-text";
import { scopeOf } from "./name-scope";

interface CopyParams {
  unitId: string;
  from: string;
  to: string;
}

/** Gives the copy of a sheet its own set of the original's names, pointing at the copy. */
const copyScopedNames: IMutation<CopyParams> = {
  id: "gyle.mutation.copy-scoped-names",
  type: CommandType.MUTATION,
  handler: (accessor, { unitId, from, to }) => {
    const workbook = accessor.get(IUniverInstanceService).getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET);
    const [source, copy] = [workbook?.getSheetBySheetId(from), workbook?.getSheetBySheetId(to)];
    if (!source || !copy) return false;
    const commands = accessor.get(ICommandService);
    for (const name of namesOf(accessor.get(IDefinedNamesService), unitId, from)) {
      const formulaOrRefString = renameSheet(name.formulaOrRefString, source.getName(), copy.getName());
      commands.syncExecuteCommand(SetDefinedNameMutation.id, {
        ...name,
        unitId,
        id: generateRandomId(),
        localSheetId: to,
        formulaOrRefString,
      });
    }
    return true;
  },
};

const removeScopedNames: IMutation<{ unitId: string; sheetId: string }> = {
  id: "gyle.mutation.remove-scoped-names",
  type: CommandType.MUTATION,
  handler: (accessor, { unitId, sheetId }) => {
    const commands = accessor.get(ICommandService);
    for (const name of namesOf(accessor.get(IDefinedNamesService), unitId, sheetId)) {
      commands.syncExecuteCommand(RemoveDefinedNameMutation.id, { ...name, unitId });
    }
    return true;
  },
};

/** As in Excel, a sheet's own names come along when it is copied and go when it is deleted; both can be undone. */
export function carryScopedNames(injector: Injector): void {
  const commands = injector.get(ICommandService);
  commands.registerCommand(copyScopedNames);
  commands.registerCommand(removeScopedNames);
  const names = injector.get(IDefinedNamesService);
  injector.get(SheetInterceptorService).interceptCommand({
    // After the grid's own, which turns names of a deleted sheet into #REF!.
    priority: -100,
    getMutations: (command) => {
      const { unitId, subUnitId, targetSubUnitId } = (command.params ?? {}) as Record<string, string>;
      if (!unitId || !subUnitId) return { redos: [], undos: [] };
      if (command.id === CopySheetCommand.id && targetSubUnitId) return copied(unitId, subUnitId, targetSubUnitId);
      if (command.id === RemoveSheetCommand.id) return removed(names, unitId, subUnitId);
      return { redos: [], undos: [] };
    },
  });
}

function copied(unitId: string, from: string, to: string): { redos: IMutationInfo[]; undos: IMutationInfo[] } {
  return {
    redos: [{ id: copyScopedNames.id, params: { unitId, from, to } }],
    undos: [{ id: removeScopedNames.id, params: { unitId, sheetId: to } }],
  };
}

function removed(service: IDefinedNamesService, unitId: string, sheetId: string): { redos: IMutationInfo[]; undos: IMutationInfo[] } {
  return {
    redos: [{ id: removeScopedNames.id, params: { unitId, sheetId } }],
    undos: namesOf(service, unitId, sheetId).map((name) => ({ id: SetDefinedNameMutation.id, params: { ...name, unitId } })),
  };
}

const namesOf = (service: IDefinedNamesService, unitId: string, sheetId: string) =>
  Object.values(service.getDefinedNameMap(unitId) ?? {}).filter((name) => scopeOf(name) === sheetId);
