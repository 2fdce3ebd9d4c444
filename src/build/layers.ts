import path from "node:path";
import ts from "typescript";

/**
 * Which part of src may see which, from the bottom to the top. Everything sees itself; where nothing is named beside it, what stands
 * above it too. The stand-in for Excel knows nothing of brewing, so that only the bench and the scripts stand over it; addin and bench do not see
 * each other: the same bundles run on both.
 */
const layers: Record<string, readonly string[]> = {
  core: [],
  functions: ["core"],
  workbook: ["core", "functions"],
  pane: ["core", "functions", "workbook"],
  addin: ["core", "functions", "workbook", "pane"],
  "excel-stand-in": [],
  bench: ["core", "functions", "workbook", "pane", "excel-stand-in"],
  build: ["core", "functions", "workbook", "pane", "addin", "excel-stand-in", "bench"],
};

/** The districts of src/workbook, each of which may see those before it. */
const districts = ["grid", "batch", "exchange", "sheets", "brewing", "care"];

/** The page's own objects. What stands below the pane must run where there is no page. */
const pageGlobals = new Set([
  "window",
  "document",
  "navigator",
  "location",
  "history",
  "localStorage",
  "sessionStorage",
  "indexedDB",
  "HTMLElement",
  "Element",
  "Node",
  "Event",
  "MutationObserver",
  "requestAnimationFrame",
  "getComputedStyle",
  "fetch",
  "XMLHttpRequest",
  "alert",
  "DOMParser",
  "Image",
  "FileReader",
]);

/** The layers that run where there is no page. */
const pageless = new Set(["core", "functions", "workbook"]);

/** A function of its arguments knows no clock, no chance and no host. */
const impureGlobals = new Set([
  "process",
  "performance",
  "setTimeout",
  "setInterval",
  "queueMicrotask",
  "globalThis",
  "Excel",
  "Office",
  "CustomFunctions",
]);

/** Complaints about one source file; `place` is its path from the project's folder, with forward slashes. */
export function layerProblems(place: string, text: string): string[] {
  const layer = layerOf(place);
  if (layer === undefined) return [`${place}: src has no layer "${place.split("/")[1] ?? ""}"`];
  const source = ts.createSourceFile(place, text, ts.ScriptTarget.Latest, true);
  const imports = importsOf(source).flatMap((target) => importProblem(place, layer, target) ?? []);
  return [...imports, ...(pageless.has(layer) ? globalProblems(place, layer, source) : [])];
}

function layerOf(place: string): string | undefined {
  const name = /^src\/([\w-]+)/.exec(place)?.[1];
  return name !== undefined && name in layers ? name : undefined;
}

const districtOf = (place: string): string | undefined => /^src\/workbook\/([\w-]+)\//.exec(place)?.[1];

/** Every module named in a file: static and dynamic imports, re-exports, types, `require`. */
export function importsOf(source: ts.SourceFile): string[] {
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if ((ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) && node.moduleSpecifier && ts.isStringLiteral(node.moduleSpecifier))
      found.push(node.moduleSpecifier.text);
    if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument) && ts.isStringLiteral(node.argument.literal))
      found.push(node.argument.literal.text);
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
  if (reachedLayer === layer) return districtProblem(place, reached);
  if (layer === "build" && !reached.startsWith("src/")) return undefined; // the configuration and the package at the top
  if (reachedLayer === undefined || !layers[layer]?.includes(reachedLayer)) return `${place}: ${layer} must not import ${reached}`;
  return undefined;
}

/** Within src/workbook an import goes to the file's own district, or to one before it. */
function districtProblem(place: string, reached: string): string | undefined {
  const [own, other] = [districtOf(place), districtOf(reached)];
  if (own === other) return undefined;
  const [from, to] = [own, other].map((district) => districts.indexOf(district ?? ""));
  return from === -1 || to === -1 || to! > from! ? `${place}: ${own ?? "workbook"} must not import ${reached}` : undefined;
}

function globalProblems(place: string, layer: string, source: ts.SourceFile): string[] {
  const pure = layer === "core" || layer === "functions";
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
  return [...new Set(used)]
    .filter((name) => forbidden(name) && !declared.has(name))
    .map((name) => `${place}: ${layer} must not use ${name}`);
}

/** A variable, parameter, function, type or import that bears this name: then the name is the file's own. */
function isDeclaration(node: ts.Identifier): boolean {
  const { parent } = node;
  return (
    (ts.isVariableDeclaration(parent) ||
      ts.isParameter(parent) ||
      ts.isBindingElement(parent) ||
      ts.isImportSpecifier(parent) ||
      ts.isImportClause(parent) ||
      ts.isNamespaceImport(parent) ||
      ts.isFunctionDeclaration(parent) ||
      ts.isClassDeclaration(parent) ||
      ts.isInterfaceDeclaration(parent) ||
      ts.isTypeAliasDeclaration(parent)) &&
    parent.name === node
  );
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
