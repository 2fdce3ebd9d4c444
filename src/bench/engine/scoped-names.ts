import { IUniverInstanceService, UniverInstanceType, type Injector, type Workbook } from "@univerjs/core";
import { IDefinedNamesService, type IDefinedNamesServiceParam } from "@univerjs/engine-formula";
import { splitFormula, type FormulaPiece } from "./formula-text";
import { localVariables } from "./local-variables";

/** How the grid writes "this name belongs to the whole workbook" (its own constant is not exported everywhere). */
export const WORKBOOK_SCOPE = "AllDefaultWorkbook";

const TOKEN = /_scope\d+_[\p{L}\p{N}_.\\?]+/gu;

/** The sheet a name belongs to; undefined for the whole workbook. */
export const scopeOf = (name: { localSheetId?: string }): string | undefined =>
  !name.localSheetId || name.localSheetId === WORKBOOK_SCOPE ? undefined : name.localSheetId;

/**
 * Names that belong to a sheet. The grid stores a name's sheet but looks names up by their spelling alone, so two
 * sheets with the same names would share one of them. Before a formula is calculated, each name in it is therefore
 * replaced by a token that is unique to name and scope (`_scope3_og`), and the lookup knows those tokens only.
 * The tokens never reach a cell: what is typed, shown and saved stays `og`.
 */
export class ScopedNames {
  private readonly scopes = new Map<string, { unitId: string; sheetId: string | undefined; prefix: string }>();
  private scopeCount = 0;
  private readonly tokens = new Map<string, IDefinedNamesServiceParam>();
  /** Tokens whose value has been worked out since the names last changed. */
  private readonly fresh = new Set<string>();
  private readonly namesByUnit = new Map<string, Map<string | undefined, Map<string, IDefinedNamesServiceParam>>>();
  private readonly qualified = new Map<string, Map<string, string>>();

  constructor(private readonly injector: Injector) {
    injector.get(IDefinedNamesService).update$.subscribe(() => this.forget());
    // Parsed formulas are cached under their text for all workbooks, so a workbook opened again gets fresh tokens.
    injector.get(IUniverInstanceService).getTypeOfUnitDisposed$<Workbook>(UniverInstanceType.UNIVER_SHEET).subscribe((unit) => {
      for (const [key, scope] of this.scopes) if (scope.unitId === unit.getUnitId()) this.scopes.delete(key);
      this.forget();
    });
  }

  /** Call when sheets are added, removed or renamed, since names can be written with their sheet. */
  forget(): void {
    this.namesByUnit.clear();
    this.qualified.clear();
    this.fresh.clear();
  }

  /**
   * The formula with every name it can see from `sheetId` replaced by its token, and with number literals written the
   * plain way (1.050 as 1.05), since the engine takes any other spelling for a text.
   */
  qualify(formula: string, unitId: string, sheetId: string): string {
    const key = `${unitId}\n${sheetId}`;
    let known = this.qualified.get(key);
    if (!known) this.qualified.set(key, (known = new Map()));
    let result = known.get(formula);
    if (result === undefined) known.set(formula, (result = this.replaceNames(formula, unitId, sheetId)));
    return result;
  }

  /** What a token stands for; the name's own formula is qualified in the name's own scope. */
  valueOfToken(token: string): IDefinedNamesServiceParam | null {
    return this.tokens.get(token.toLowerCase()) ?? null;
  }

  token(unitId: string, name: { name: string; localSheetId?: string }): string {
    return `${this.prefix(unitId, scopeOf(name))}${name.name.toLowerCase()}`;
  }

  /** Every token a formula depends on, through names of names too. */
  tokensIn(formula: string, found = new Set<string>()): Set<string> {
    for (const [token] of formula.matchAll(TOKEN)) {
      if (found.has(token)) continue;
      found.add(token);
      this.tokensIn(this.tokens.get(token)?.formulaOrRefString ?? "", found);
    }
    return found;
  }

  /** The token and those of all names defined by means of it. */
  dependentTokens(changed: string): string[] {
    return [...this.tokens].filter(([token, name]) => token === changed || this.tokensIn(name.formulaOrRefString).has(changed))
      .map(([token]) => token);
  }

  /** The name a cell of `sheetId` means by `name`; with `sheetName` only that sheet's (or the workbook's) is meant. */
  find(unitId: string, sheetId: string, name: string, sheetName?: string): IDefinedNamesServiceParam | undefined {
    const from = sheetName === undefined ? sheetId : this.sheetIdOf(unitId, sheetName);
    const local = from === undefined ? undefined : this.names(unitId, from).get(name.toLowerCase());
    return local ?? this.names(unitId, undefined).get(name.toLowerCase());
  }

  private replaceNames(formula: string, unitId: string, sheetId: string): string {
    const pieces = splitFormula(formula);
    const hidden = localVariables(pieces);
    const result = pieces.map((piece) => this.replacePiece(piece, unitId, sheetId, hidden)).join("");
    // A formula that is nothing but a changed name would be parsed anew without replacing the parsed formula that the
    // engine keeps, so the next calculation would use the old one. Brackets make it a formula like any other.
    return /^=_scope\d+_[^-+*/^&<>=%(,;:\s]+$/u.test(result) ? `=(${result.slice(1)})` : result;
  }

  private replacePiece(piece: FormulaPiece, unitId: string, sheetId: string, hidden: ReadonlySet<string>): string {
    if (piece.kind === "number") return String(Number(piece.source));
    if (piece.kind !== "name" || (!piece.sheet && hidden.has(piece.name.toLowerCase()))) return piece.source;
    const found = this.find(unitId, sheetId, piece.name, piece.sheet);
    if (!found) return piece.source;
    const token = this.token(unitId, found);
    if (!this.fresh.has(token)) {
      this.fresh.add(token); // first, so that a name that means itself ends here
      this.tokens.set(token, { ...found, name: token, formulaOrRefString: this.inScope(found, unitId, sheetId) });
    }
    return token;
  }

  /** The engine pastes a name's text into the formula, so anything but a plain reference needs brackets. */
  private inScope(name: IDefinedNamesServiceParam, unitId: string, sheetId: string): string {
    const text = this.replaceNames(name.formulaOrRefString.replace(/^=/u, ""), unitId, scopeOf(name) ?? sheetId);
    return /[-+*/^&<>=%]/u.test(text.replaceAll(/'(?:[^']|'')*'|"(?:[^"]|"")*"/gu, "")) ? `(${text})` : text;
  }

  private names(unitId: string, scope: string | undefined): Map<string, IDefinedNamesServiceParam> {
    let byScope = this.namesByUnit.get(unitId);
    if (!byScope) this.namesByUnit.set(unitId, (byScope = this.readNames(unitId)));
    return byScope.get(scope) ?? new Map();
  }

  private readNames(unitId: string): Map<string | undefined, Map<string, IDefinedNamesServiceParam>> {
    const byScope = new Map<string | undefined, Map<string, IDefinedNamesServiceParam>>();
    for (const name of Object.values(this.injector.get(IDefinedNamesService).getDefinedNameMap(unitId) ?? {})) {
      const scope = scopeOf(name);
      if (!byScope.has(scope)) byScope.set(scope, new Map());
      byScope.get(scope)!.set(name.name.toLowerCase(), name);
    }
    return byScope;
  }

  private prefix(unitId: string, sheetId: string | undefined): string {
    const key = `${unitId}\n${sheetId ?? ""}`;
    let scope = this.scopes.get(key);
    if (!scope) this.scopes.set(key, (scope = { unitId, sheetId, prefix: `_scope${this.scopeCount++}_` }));
    return scope.prefix;
  }

  private sheetIdOf(unitId: string, sheetName: string): string | undefined {
    const workbook = this.injector.get(IUniverInstanceService).getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET);
    return workbook?.getSheets().find((sheet) => sheet.getName().toLowerCase() === sheetName.toLowerCase())?.getSheetId();
  }
}
