import path from "node:path";
import ts from "typescript";

/**
 * Which part of src may see which. An import goes downwards: to the file's own layer, or to one with a lower rank.
 * addin and bench share a rank and do not see each other: the same bundles run on both.
 */
const ranks: Record<string, number> = { core: 0, functions: 1, workbook: 2, pane: 3, addin: 4, bench: 4, build: 5 };

/** The page's own objects. What stands below the pane must run where there is no page. */
const pageGlobals = new Set(["window", "document", "navigator", "location", "history", "localStorage", "sessionStorage", "indexedDB", "HTMLElement", "Element", "Node", "Event", "MutationObserver", "requestAnimationFrame", "getComputedStyle", "fetch", "XMLHttpRequest", "alert", "DOMParser", "Image", "FileReader"]);

/** A function of its arguments knows no clock, no chance and no host. */
const impureGlobals = new Set(["process", "performance", "setTimeout", "setInterval", "queueMicrotask", "globalThis", "Excel", "Office", "CustomFunctions"]);

/** Complaints about one source file; `place` is its path from the project's folder, with forward slashes. */
export function layerProblems(place: string, text: string): string[] {
  const layer = layerOf(place);
  if (layer === undefined) return [`${place}: src has no layer "${place.split("/")[1] ?? ""}"`];
  const source = ts.createSourceFile(place, text, ts.ScriptTarget.Latest, true);
  const imports = importsOf(source).flatMap((target) => importProblem(place, layer, target) ?? []);
  return [...imports, ...(rankOf(layer) <= rankOf("workbook") ? globalProblems(place, layer, source) : [])];
}

function layerOf(place: string): string | undefined {
  const name = /^src\/(\w+)/.exec(place)?.[1];
  return name !== undefined && name in ranks ? name : undefined;
}

const rankOf = (layer: string): number => ranks[layer] ?? Number.POSITIVE_INFINITY;

/** Every module named in a file: static and dynamic imports, re-exports, types, `require`. */
export function importsOf(source: ts.SourceFile): string[] {
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if ((ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) && node.moduleSpecifier && ts.isStringLiteral(node.moduleSpecifier)) found.push(node.moduleSpecifier.text);
    if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument) && ts.isStringLiteral(node.argument.literal)) found.push(node.argument.literal.text);
    if (ts.isCallExpression(node) && (node.expression.kind === ts.SyntaxKind.ImportKeyword || node.expression.getText() === "require")) {
      const target = node.arguments[0];
      found.push(target && ts.isStringLiteralLike(target) ? target.text : "(computed)");
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

function importProblem(place: string, layer: string, target: string): string | undefined {
  if (!target.startsWith(".")) return layer === "core" ? `${place}: core imports nothing from outside, not "${target}"` : undefined;
  const reached = path.posix.join(path.posix.dirname(place), target);
  const reachedLayer = layerOf(reached);
  if (reachedLayer === layer) return undefined;
  if (layer === "build" && !reached.startsWith("src/")) return undefined; // the configuration and the package at the top
  if (reachedLayer === undefined || rankOf(reachedLayer) >= rankOf(layer)) return `${place}: ${layer} must not import ${reached}`;
  return undefined;
}

function globalProblems(place: string, layer: string, source: ts.SourceFile): string[] {
  const pure = rankOf(layer) <= rankOf("functions");
  const declared = new Set<string>();
  const used: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isIdentifier(node)) {
      if (isDeclaration(node)) declared.add(node.text);
      else if (isLookedUp(node)) used.push(node.text);
    }
    if (pure && readsClockOrChance(node)) used.push(node.getText());
    ts.forEachChild(node, visit);
  };
  visit(source);
  const forbidden = (name: string): boolean => pageGlobals.has(name) || (pure && (impureGlobals.has(name) || /[. ]/.test(name)));
  return [...new Set(used)].filter((name) => forbidden(name) && !declared.has(name)).map((name) => `${place}: ${layer} must not use ${name}`);
}

/** A variable, parameter, function, type or import that bears this name: then the name is the file's own. */
function isDeclaration(node: ts.Identifier): boolean {
  const { parent } = node;
  return (ts.isVariableDeclaration(parent) || ts.isParameter(parent) || ts.isBindingElement(parent) || ts.isImportSpecifier(parent) || ts.isImportClause(parent) || ts.isNamespaceImport(parent) || ts.isFunctionDeclaration(parent) || ts.isClassDeclaration(parent) || ts.isInterfaceDeclaration(parent) || ts.isTypeAliasDeclaration(parent)) && parent.name === node;
}

/** Not the name of a property: `range.location` says nothing about the page. */
function isLookedUp(node: ts.Identifier): boolean {
  const { parent } = node;
  if (ts.isPropertyAccessExpression(parent)) return parent.name !== node;
  if (ts.isQualifiedName(parent)) return parent.right !== node;
  if (ts.isBindingElement(parent)) return parent.propertyName !== node;
  return ts.isShorthandPropertyAssignment(parent) || !("name" in parent && parent.name === node);
}

function readsClockOrChance(node: ts.Node): boolean {
  if (ts.isPropertyAccessExpression(node)) return /^(Date\.now|Math\.random)$/.test(node.getText());
  return ts.isNewExpression(node) && (node.arguments?.length ?? 0) === 0 && node.expression.getText() === "Date";
}
