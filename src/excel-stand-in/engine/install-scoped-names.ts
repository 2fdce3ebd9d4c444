import { ICommandService, type Injector } from "@univerjs/core";
import {
  IFormulaCurrentConfigService,
  IFormulaDependencyGenerator,
  IFunctionService,
  Lexer,
  LexerNode,
  LexerTreeBuilder,
  type BaseFunction,
  type IDefinedNamesServiceParam,
} from "@univerjs/engine-formula";
import { InsertSheetMutation, RemoveSheetMutation, SetWorksheetNameMutation } from "@univerjs/sheets";
import { unquoteSheet } from "./formula-text";
import type { ScopedNames } from "./scoped-names";

/** Puts `names` between the engine and its own lookup of names, which knows no sheets. */
export function installScopedNames(injector: Injector, names: ScopedNames): void {
  qualifyFormulas(injector, names);
  lookUpTokens(injector, names);
  lookUpForIndirect(injector, names);
  const sheetsChange = new Set([InsertSheetMutation.id, RemoveSheetMutation.id, SetWorksheetNameMutation.id]);
  injector.get(ICommandService).onCommandExecuted((command) => {
    if (sheetsChange.has(command.id)) names.sheetsChanged();
  });
}

type OtherFormulas = Record<string, Record<string, Record<string, { f: string }>>>;

/** The inner step that puts formulas of validation and conditional formats into the dependency list; those of cells: FormulaMeanings. */
interface GeneratorSteps {
  _registerOtherFormulas(formulas: OtherFormulas, ...rest: unknown[]): void;
}

function qualifyFormulas(injector: Injector, names: ScopedNames): void {
  const generator = injector.get(IFormulaDependencyGenerator) as unknown as GeneratorSteps;
  if (!generator._registerOtherFormulas) {
    throw new Error("The grid's engine has changed: sheet-scoped names cannot be installed.");
  }
  const registerOthers = generator._registerOtherFormulas.bind(generator);
  generator._registerOtherFormulas = (formulas, ...rest) => registerOthers(qualifyAll(formulas, names), ...rest);
}

function qualifyAll(formulas: OtherFormulas, names: ScopedNames): OtherFormulas {
  const mapValues = <In, Out>(record: Record<string, In>, change: (value: In, key: string) => Out): Record<string, Out> =>
    Object.fromEntries(Object.entries(record ?? {}).map(([key, value]) => [key, change(value, key)]));
  return mapValues(formulas, (sheets, unitId) =>
    mapValues(sheets, (entries, sheetId) => mapValues(entries, (entry) => ({ ...entry, f: names.qualify(entry.f, unitId, sheetId) }))),
  );
}

/**
 * The lexer pastes names into formulas; it gets to see our tokens only. It also forgets which names it pasted when
 * they stand for plain cells, so that a changed name would not calculate its users: hence `setDefinedNames`.
 */
function lookUpTokens(injector: Injector, names: ScopedNames): void {
  const config = injector.get(IFormulaCurrentConfigService);
  const builder = injector.get(LexerTreeBuilder);
  injector.get(Lexer).treeBuilder = (formula, transformSuffix = true) => {
    const tree = builder.treeBuilder(formula, transformSuffix, {
      unitId: config.getExecuteUnitId(),
      getValueByName: (_unitId, name) => names.valueOfToken(name),
      getDirtyDefinedNameMap: () => config.getDirtyDefinedNameMap(),
      getSheetName: (unitId, sheetId) => config.getSheetName(unitId, sheetId),
    });
    if (tree instanceof LexerNode) tree.setDefinedNames([...names.tokensIn(formula)]);
    return tree;
  };
}

/** INDIRECT("og") and INDIRECT("'Batch 1'!og"). */
function lookUpForIndirect(injector: Injector, names: ScopedNames): void {
  const indirect = injector.get(IFunctionService).getExecutor("INDIRECT") as BaseFunction | undefined;
  if (!indirect) return;
  indirect.getDefinedName = (text: string): IDefinedNamesServiceParam | null => {
    const split = text.lastIndexOf("!");
    const sheetName = split < 0 ? undefined : unquoteSheet(text.slice(0, split));
    return names.find(indirect.unitId ?? "", indirect.subUnitId ?? "", text.slice(split + 1), sheetName) ?? null;
  };
}
