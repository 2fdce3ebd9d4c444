import { IUniverInstanceService, UniverInstanceType, type Injector, type Workbook } from "@univerjs/core";
import { IDefinedNamesService, type IDefinedNamesServiceParam } from "@univerjs/engine-formula";
import { splitFormula, type FormulaPiece } from "./formula-text";
import { localVariables } from "./local-variables";
import { NameLists } from "./name-lists";
import { scopeOf } from "./name-scope";
import { callForSpills } from "./call-for-spills";

/** Stands among the tokens for what the sheets are called. */
const WRITTEN_WITH_SHEET = "sheets";

const TOKEN = /_scope\d+_[\p{L}\p{N}_.\\?]+/gu;

/** At the end of what stands before a name: a minus that has nothing to take away from. */
const SIGN_BEFORE = /(?:^|[=(,;{&<>*/^+-])\s*-\s*$/u;

/** A formula as the engine gets to see it; undefined while it has to be worked out anew. */
interface Qualified {
  text: string | undefined;
}

/**
 * Names that belong to a sheet. The grid stores a name's sheet but looks names up by their spelling alone, so two
 * sheets with the same names would share one of them. Before a formula is calculated, each name in it is therefore
 * replaced by a token that is unique to name and scope (`_scope3_og`), and the lookup knows those tokens only.
 * The tokens never reach a cell: what is typed, shown and saved stays `og`.
 *
 * A workbook of many batch sheets has thousands of names, and a new sheet brings a hundred: what was worked out is kept,
 * and a changed name drops only the formulas that read it.
 */
export class ScopedNames {
  private readonly scopes = new Map<string, { unitId: string; sheetId: string | undefined; prefix: string }>();
  private scopeCount = 0;
  private readonly tokens = new Map<string, IDefinedNamesServiceParam>();
  /** Tokens whose value has been worked out since the names last changed. */
  private readonly fresh = new Set<string>();
  private readonly lists: NameLists;
  private readonly qualified = new Map<string, Map<string, Qualified>>();
  /** By token, whether there is such a name or not: the formulas that would read it, and the names defined by means of it. */
  private readonly readers = new Map<string, { formulas: Set<Qualified>; names: Set<string> }>();

  constructor(private readonly injector: Injector) {
    this.lists = new NameLists(injector.get(IDefinedNamesService), (unitId, names) => {
      if (names === "all") this.forget();
      else for (const name of names) this.drop(this.token(unitId, name));
    });
    // Parsed formulas are cached under their text for all workbooks, so a workbook opened again gets fresh tokens.
    injector
      .get(IUniverInstanceService)
      .getTypeOfUnitDisposed$<Workbook>(UniverInstanceType.UNIVER_SHEET)
      .subscribe((unit) => {
        for (const [key, scope] of this.scopes) if (scope.unitId === unit.getUnitId()) this.scopes.delete(key);
        this.lists.forget(unit.getUnitId());
        this.forget();
      });
  }

  /** Call when sheets are added, removed or renamed, since names can be written with their sheet. */
  sheetsChanged(): void {
    this.drop(WRITTEN_WITH_SHEET);
  }

  /**
   * The formula with every name it can see from `sheetId` replaced by its token, and with number literals written the
   * plain way (1.050 as 1.05), since the engine takes any other spelling for a text.
   */
  qualify(formula: string, unitId: string, sheetId: string): string {
    const key = `${unitId}\n${sheetId}`;
    let known = this.qualified.get(key);
    if (!known) this.qualified.set(key, (known = new Map()));
    let kept = known.get(formula);
    if (!kept) known.set(formula, (kept = { text: undefined }));
    if (kept.text === undefined) {
      const read = new Set<string>();
      kept.text = this.replaceNames(formula, unitId, sheetId, read);
      for (const token of read) this.readersOf(token).formulas.add(kept);
    }
    return kept.text;
  }

  /** What a token stands for; the name's own formula is qualified in the name's own scope. */
  valueOfToken(token: string): IDefinedNamesServiceParam | null {
    return this.tokens.get(token.toLowerCase()) ?? null;
  }

  token(unitId: string, name: { name: string; localSheetId?: string }): string {
    return this.tokenIn(unitId, scopeOf(name), name.name);
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
  dependentTokens(changed: string, found = new Set<string>()): Set<string> {
    if (found.has(changed)) return found;
    found.add(changed);
    for (const name of this.readers.get(changed)?.names ?? []) this.dependentTokens(name, found);
    return found;
  }

  /** The name a cell of `sheetId` means by `name`; with `sheetName` only that sheet's (or the workbook's) is meant. */
  find(unitId: string, sheetId: string, name: string, sheetName?: string): IDefinedNamesServiceParam | undefined {
    const from = sheetName === undefined ? sheetId : this.sheetIdOf(unitId, sheetName);
    const local = from === undefined ? undefined : this.lists.find(unitId, from, name);
    return local ?? this.lists.find(unitId, undefined, name);
  }

  /** The name that belongs to just this sheet, or with undefined to the workbook. */
  findIn(unitId: string, scope: string | undefined, name: string): IDefinedNamesServiceParam | undefined {
    return this.lists.find(unitId, scope, name);
  }

  /** All names that belong to just this sheet, or with undefined to the workbook. */
  listIn(unitId: string, scope: string | undefined): IDefinedNamesServiceParam[] {
    return this.lists.list(unitId, scope);
  }

  /** Adds to `read` the token of every name that would change the result, were it to come, go or be pointed elsewhere. */
  private replaceNames(formula: string, unitId: string, sheetId: string, read: Set<string>): string {
    const pieces = callForSpills(splitFormula(formula));
    const hidden = localVariables(pieces);
    let result = "";
    for (const piece of pieces) {
      const text = this.replacePiece(piece, unitId, sheetId, hidden, read);
      // The engine takes a sign that stands before a name for a part of the name.
      result += text !== piece.source && piece.kind === "name" && SIGN_BEFORE.test(result.slice(-12)) ? `(${text})` : text;
    }
    // A formula that is nothing but a changed name would be parsed anew without replacing the parsed formula that the
    // engine keeps, so the next calculation would use the old one. Brackets make it a formula like any other.
    return /^=_scope\d+_[^-+*/^&<>=%(,;:\s]+$/u.test(result) ? `=(${result.slice(1)})` : result;
  }

  private replacePiece(piece: FormulaPiece, unitId: string, sheetId: string, hidden: ReadonlySet<string>, read: Set<string>): string {
    if (piece.kind === "number") return String(Number(piece.source));
    if (piece.kind !== "name" || (!piece.sheet && hidden.has(piece.name.toLowerCase()))) return piece.source;
    const from = piece.sheet === undefined ? sheetId : this.sheetIdOf(unitId, piece.sheet);
    if (piece.sheet !== undefined) read.add(WRITTEN_WITH_SHEET);
    for (const scope of [from, undefined]) read.add(this.tokenIn(unitId, scope, piece.name));
    const found = this.find(unitId, sheetId, piece.name, piece.sheet);
    if (!found) return piece.source;
    const token = this.token(unitId, found);
    if (!this.fresh.has(token)) {
      this.fresh.add(token); // first, so that a name that means itself ends here
      this.tokens.set(token, { ...found, name: token, formulaOrRefString: this.inScope(found, token, unitId, sheetId) });
    }
    return token;
  }

  /** The engine pastes a name's text into the formula, so anything but a plain reference needs brackets. */
  private inScope(name: IDefinedNamesServiceParam, token: string, unitId: string, sheetId: string): string {
    const read = new Set<string>();
    const text = this.replaceNames(name.formulaOrRefString.replace(/^=/u, ""), unitId, scopeOf(name) ?? sheetId, read);
    for (const one of read) this.readersOf(one).names.add(token);
    return /[-+*/^&<>=%]/u.test(text.replaceAll(/'(?:[^']|'')*'|"(?:[^"]|"")*"/gu, "")) ? `(${text})` : text;
  }

  /** A name came, went or means something else: what was worked out with it is worked out anew when it is next asked for. */
  private drop(token: string): void {
    for (const changed of this.dependentTokens(token)) {
      this.fresh.delete(changed);
      const formulas = this.readers.get(changed)?.formulas;
      for (const formula of formulas ?? []) formula.text = undefined;
      formulas?.clear();
    }
  }

  private forget(): void {
    this.qualified.clear();
    this.fresh.clear();
    this.readers.clear();
  }

  private readersOf(token: string): { formulas: Set<Qualified>; names: Set<string> } {
    let readers = this.readers.get(token);
    if (!readers) this.readers.set(token, (readers = { formulas: new Set(), names: new Set() }));
    return readers;
  }

  private tokenIn(unitId: string, scope: string | undefined, name: string): string {
    return `${this.prefix(unitId, scope)}${name.toLowerCase()}`;
  }

  private prefix(unitId: string, sheetId: string | undefined): string {
    const key = `${unitId}\n${sheetId ?? ""}`;
    let scope = this.scopes.get(key);
    if (!scope) this.scopes.set(key, (scope = { unitId, sheetId, prefix: `_scope${this.scopeCount++}_` }));
    return scope.prefix;
  }

  private sheetIdOf(unitId: string, sheetName: string): string | undefined {
    const workbook = this.injector.get(IUniverInstanceService).getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET);
    return workbook
      ?.getSheets()
      .find((sheet) => sheet.getName().toLowerCase() === sheetName.toLowerCase())
      ?.getSheetId();
  }
}
