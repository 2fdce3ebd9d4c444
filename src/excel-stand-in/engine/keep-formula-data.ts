import { CommandType, ICommandService, IUniverInstanceService, UniverInstanceType, type Injector, type Workbook } from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";

type OfSheet = NonNullable<ReturnType<FormulaDataModel["getSheetFormulaData"]>>;

/**
 * For every calculation and every cell that is written the engine looks through all cells of the workbook for formulas. Here a sheet is
 * looked through again only after something has changed on it; as long as nothing has, it is the same object.
 */
export function keepFormulaData(injector: Injector): void {
  const model = injector.get(FormulaDataModel);
  const instances = injector.get(IUniverInstanceService);
  const known = new Map<string, OfSheet>();
  const keyOf = (unitId: string, sheetId: string): string => `${unitId}\n${sheetId}`;
  model.getFormulaData = () => {
    const all: ReturnType<FormulaDataModel["getFormulaData"]> = {};
    const present = new Set<string>();
    for (const workbook of instances.getAllUnitsForType<Workbook>(UniverInstanceType.UNIVER_SHEET)) {
      const unitId = workbook.getUnitId();
      const ofUnit: NonNullable<(typeof all)[string]> = (all[unitId] = {});
      for (const sheetId of workbook.getSheets().map((sheet) => sheet.getSheetId())) {
        const key = keyOf(unitId, sheetId);
        present.add(key);
        let data = known.get(key);
        if (!data) known.set(key, (data = model.getSheetFormulaData(unitId, sheetId) as OfSheet));
        ofUnit[sheetId] = data;
      }
    }
    for (const key of known.keys()) if (!present.has(key)) known.delete(key);
    return all;
  };
  const update = model.updateFormulaData.bind(model);
  model.updateFormulaData = (unitId, sheetId, cells) => {
    const changed = update(unitId, sheetId, cells);
    // It writes into what it was given.
    known.delete(keyOf(unitId, sheetId));
    return changed;
  };
  injector.get(ICommandService).onCommandExecuted(({ id, type, params }) => {
    // Those of the engine itself change what is shown, in mutations of their own.
    if (type !== CommandType.MUTATION || id.startsWith("formula.mutation.")) return;
    const { unitId, subUnitId } = (params ?? {}) as { unitId?: string; subUnitId?: string };
    if (unitId !== undefined && subUnitId !== undefined) known.delete(keyOf(unitId, subUnitId));
    else known.clear();
  });
}
