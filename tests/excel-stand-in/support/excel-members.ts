import { readdirSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import ts from "typescript";

const root = fileURLToPath(new URL("../../..", import.meta.url));

function sources(folder: string): string[] {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/u.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name));
}

/** The compiler's view of our own code, of the stand-in, of its tests, and of Microsoft's declarations. */
export class ExcelMembers {
  private readonly program: ts.Program;
  private readonly checker: ts.TypeChecker;
  /** By Excel's class, such as "Range": what the stand-in has in its place. */
  readonly offered = new Map<string, ts.Type>();

  constructor() {
    const config = ts.readConfigFile(join(root, "tsconfig.json"), (path) => ts.sys.readFile(path)).config as { compilerOptions: object };
    const { options } = ts.convertCompilerOptionsFromJson(config.compilerOptions, root);
    const files = ["src/workbook", "src/pane", "src/excel-stand-in/excel", "tests/excel-stand-in/excel"].flatMap(sources);
    this.program = ts.createProgram(files, { ...options, noEmit: true });
    this.checker = this.program.getTypeChecker();
    this.findOffered();
  }

  /** Members of Excel's and Office's objects that the code of a folder uses, as "Range.values", with the first place. */
  usedIn(folder: string): Map<string, string> {
    const used = new Map<string, string>();
    this.walk(folder, (node) => {
      for (const symbol of this.accessed(node)) {
        const owner = microsoftOwner(symbol);
        if (owner && !used.has(`${owner}.${symbol.name}`)) {
          const file = node.getSourceFile();
          used.set(
            `${owner}.${symbol.name}`,
            `${file.fileName.slice(root.length)}:${file.getLineAndCharacterOfPosition(node.getStart()).line + 1}`,
          );
        }
      }
    });
    return used;
  }

  /** Every file of a folder with the members that it uses, each as in `usedIn`. */
  usedByFile(folder: string): Map<string, Set<string>> {
    const used = new Map<string, Set<string>>();
    this.walk(folder, (node) => {
      for (const symbol of this.accessed(node)) {
        const owner = microsoftOwner(symbol);
        const file = node.getSourceFile().fileName.slice(root.length);
        if (owner) used.set(file, (used.get(file) ?? new Set()).add(`${owner}.${symbol.name}`));
      }
    });
    return used;
  }

  offers(member: string): boolean {
    const [owner = "", name = ""] = member.split(".");
    return isPublic(this.offered.get(owner)?.getProperty(name));
  }

  /** The public members of the stand-in's classes that Excel has as well: "Range.values". */
  members(): string[] {
    return [...this.offered].flatMap(([owner, type]) =>
      type
        .getProperties()
        .filter((member) => isPublic(member) && !everywhere.has(member.name) && this.microsoft(owner)?.getProperty(member.name))
        .map((member) => `${owner}.${member.name}`),
    );
  }

  /** The members of the stand-in that its own tests touch. */
  testedMembers(): Set<string> {
    const touched = new Set<ts.Symbol>();
    this.walk("tests/excel-stand-in/excel", (node) => this.accessed(node).forEach((symbol) => touched.add(symbol)));
    const declared = new Set([...touched].flatMap((symbol) => symbol.declarations ?? []));
    return new Set(
      this.members().filter((member) => {
        const [owner = "", name = ""] = member.split(".");
        return this.offered
          .get(owner)
          ?.getProperty(name)
          ?.declarations?.some((declaration) => declared.has(declaration));
      }),
    );
  }

  /** The n of "[Api set: ExcelApi 1.n]" in Microsoft's comment above a class or one of its members; 0 where there is none. */
  excelApi(member: string): number {
    const [owner = "", name] = member.split(".");
    const symbol = name === undefined ? this.microsoft(owner)?.symbol : this.microsoft(owner)?.getProperty(name);
    const words = (symbol?.declarations ?? [])
      .map((declaration) => declaration.getFullText().slice(0, declaration.getStart() - declaration.getFullStart()))
      .join("");
    return Number(/Api set: ExcelApi 1\.(\d+)/u.exec(words)?.[1] ?? 0);
  }

  private microsoft(owner: string): ts.Type | undefined {
    return this.originals.get(owner);
  }

  private readonly originals = new Map<string, ts.Type>();

  /** Classes say themselves what they stand for; what hangs below them without a class of its own is found by its place. */
  private findOffered(): void {
    this.walk("src/excel-stand-in/excel", (node) => {
      if (!ts.isClassDeclaration(node)) return;
      for (const clause of node.heritageClauses?.flatMap(({ types }) => types) ?? []) {
        if (clause.expression.getText() === "StandsFor" && clause.typeArguments?.[0])
          this.pair(this.checker.getTypeFromTypeNode(clause.typeArguments[0]), this.checker.getTypeAtLocation(node));
      }
      if (node.name?.text === "Context") this.pairNamed("Excel", "RequestContext", this.checker.getTypeAtLocation(node));
    });
    this.walk("src/excel-stand-in/excel", (node) => {
      if (!ts.isTypeAliasDeclaration(node)) return;
      const type = this.checker.getTypeAtLocation(node);
      if (node.name.text === "RunOptions") this.pairNamed("Excel", "RunOptions", type);
      const context = node.name.text === "OfficeGlobal" ? type.getProperty("context") : undefined;
      if (context) this.pairNamed("Office", "Context", this.checker.getTypeOfSymbol(context));
    });
  }

  private pairNamed(space: string, name: string, standIn: ts.Type): void {
    const namespace = this.checker
      .getSymbolsInScope(this.program.getSourceFiles()[0]!, ts.SymbolFlags.Namespace)
      .find((symbol) => symbol.name === space);
    const symbol = namespace?.exports?.get(name as ts.__String);
    if (symbol) this.pair(this.checker.getDeclaredTypeOfSymbol(symbol), standIn);
  }

  private pair(original: ts.Type, standIn: ts.Type): void {
    const name = original.symbol?.name;
    if (!name || this.offered.has(name)) return;
    this.offered.set(name, standIn);
    this.originals.set(name, original);
    for (const member of standIn.getProperties()) {
      const theirs = original.getProperty(member.name);
      const type = theirs && this.checker.getTypeOfSymbol(theirs);
      const isObject = type?.symbol && microsoftSpace(type.symbol) !== undefined && !(type.flags & ts.TypeFlags.EnumLike);
      const ours = this.checker.getTypeOfSymbol(member);
      const isFromMicrosoft = ours.symbol && microsoftSpace(ours.symbol) !== undefined;
      if (isObject && !isFromMicrosoft && ours.getProperties().length > 0 && !hasOwnClass(ours)) this.pair(type, ours);
    }
  }

  private accessed(node: ts.Node): ts.Symbol[] {
    if (ts.isPropertyAccessExpression(node)) return this.declared(this.checker.getSymbolAtLocation(node.name));
    if (ts.isBindingElement(node) && ts.isObjectBindingPattern(node.parent)) {
      const type = this.checker.getTypeAtLocation(node.parent);
      return this.declared(type.getProperty((node.propertyName ?? node.name).getText()));
    }
    if (ts.isPropertyAssignment(node)) return this.declared(this.checker.getContextualType(node.parent)?.getProperty(node.name.getText()));
    return [];
  }

  private declared(symbol: ts.Symbol | undefined): ts.Symbol[] {
    return symbol ? [symbol] : [];
  }

  private walk(folder: string, visit: (node: ts.Node) => void): void {
    const start = join(root, folder);
    const down = (node: ts.Node): void => {
      visit(node);
      ts.forEachChild(node, down);
    };
    for (const file of this.program.getSourceFiles()) if (file.fileName.startsWith(start)) down(file);
  }
}

/** What every object has from its base class; client-object.ts has tests of its own. */
const everywhere = new Set(["context", "load", "toJSON", "isNullObject"]);

const isPublic = (symbol: ts.Symbol | undefined): boolean =>
  symbol?.declarations?.every((one) => !(ts.getCombinedModifierFlags(one) & ts.ModifierFlags.NonPublicAccessibilityModifier)) ?? false;

/** A class of the stand-in that says itself what it stands for. */
const hasOwnClass = (type: ts.Type): boolean =>
  type.symbol.declarations?.some(
    (one) =>
      ts.isClassDeclaration(one) &&
      one.heritageClauses?.some(({ types }) => types.some(({ expression }) => expression.getText() === "StandsFor")),
  ) ?? false;

/** "Excel" or "Office" for what Microsoft declares there. */
function microsoftSpace(symbol: ts.Symbol): string | undefined {
  const declaration = symbol.declarations?.[0];
  if (!declaration?.getSourceFile().fileName.includes("@types/office-js")) return undefined;
  for (let node: ts.Node | undefined = declaration; node; node = node.parent) {
    if (ts.isModuleDeclaration(node) && (node.name.text === "Excel" || node.name.text === "Office")) return node.name.text;
  }
  return undefined;
}

/** The class of which a member is one; data that is passed back and forth has none. */
function microsoftOwner(symbol: ts.Symbol): string | undefined {
  const parent = symbol.declarations?.[0]?.parent;
  if (!parent || microsoftSpace(symbol) === undefined) return undefined;
  const space = microsoftSpace(symbol);
  const isObject = ts.isClassDeclaration(parent) || (space === "Office" && ts.isInterfaceDeclaration(parent));
  return isObject && parent.name ? parent.name.text : undefined;
}
