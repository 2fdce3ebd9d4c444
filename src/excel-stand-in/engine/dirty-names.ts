import { IUniverInstanceService, UniverInstanceType, type ICommandInfo, type Injector, type Workbook } from "@univerjs/core";
import { IActiveDirtyManagerService, RemoveDefinedNameMutation, SetDefinedNameMutation } from "@univerjs/engine-formula";
import { scopeOf } from "./name-scope";
import type { ScopedNames } from "./scoped-names";

interface ChangedName {
  unitId: string;
  name: string;
  localSheetId?: string;
  formulaOrRefString: string;
}

type DirtyData = ReturnType<Parameters<IActiveDirtyManagerService["register"]>[1]["getDirtyData"]>;

/**
 * Which formulas to calculate again when a name changes or goes: those that use its token, and all of its own sheet, which may
 * have meant another name of that spelling before, or mean one now.
 */
export function markUsersOfNames(injector: Injector, names: ScopedNames): void {
  const manager = injector.get(IActiveDirtyManagerService);
  const sheetName = (unitId: string, sheetId: string): string | undefined =>
    injector.get(IUniverInstanceService).getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET)?.getSheetBySheetId(sheetId)?.getName();
  const changed = (command: ICommandInfo): DirtyData => {
    const name = command.params as ChangedName;
    const sheet = scopeOf(name);
    const title = sheet && sheetName(name.unitId, sheet);
    const tokens = [...names.dependentTokens(names.token(name.unitId, name))];
    return {
      dirtyDefinedNameMap: { [name.unitId]: Object.fromEntries(tokens.map((one) => [one, name.formulaOrRefString])) },
      dirtyNameMap: sheet && title ? { [name.unitId]: { [sheet]: title } } : {},
    };
  };
  for (const { id } of [SetDefinedNameMutation, RemoveDefinedNameMutation]) manager.register(id, { commandId: id, getDirtyData: changed });
}
