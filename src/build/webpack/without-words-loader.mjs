// @ts-check
// Takes the words out of the worksheet functions' descriptions for functions.js: what a cell needs is parameters, result
// and compute. Excel gets the words from functions.json, and the pane has the whole registry in its own bundle.
import ts from "typescript";

const words = new Set(["summary", "equation", "sources", "examples", "cautions"]);

/** @typedef {{ from: number, to: number, by?: string }} Cut */

/** @param {string} source */
export default function withoutWords(source) {
  const file = ts.createSourceFile("source.ts", source, ts.ScriptTarget.Latest, true);
  const explainers = explainersOf(file);
  /** @type {Cut[]} */
  const cuts = [];
  /** @param {ts.Node} node */
  const visit = (node) => {
    const gone = ts.isCallExpression(node) && node.expression.getText() === "describeFunction" ? wordsIn(node, source) : [];
    cuts.push(...gone);
    const explanation = explanationIn(node, explainers);
    if (explanation !== undefined) cuts.push({ from: explanation.getStart(), to: explanation.end, by: '""' });
    if (isUsualFigure(node)) cuts.push({ from: node.getFullStart(), to: node.end + (source[node.end] === "," ? 1 : 0) });
    const origin = originOfSpread(node);
    if (origin !== undefined) cuts.push({ from: origin.getStart(), to: origin.end, by: '""' });
    ts.forEachChild(node, visit);
  };
  visit(file);
  return outermost(cuts).reduceRight((text, { from, to, by = "" }) => text.slice(0, from) + by + text.slice(to), source);
}

/**
 * The usual figure of an argument: words about it, in the pane and the help, are all that uses it.
 *
 * @param {ts.Node} node
 */
const isUsualFigure = (node) =>
  (ts.isPropertyAssignment(node) || ts.isShorthandPropertyAssignment(node)) && node.name.getText() === "typical";

/**
 * Where the ± of an equation is from: only the pane says it.
 *
 * @param {ts.Node} node
 */
function originOfSpread(node) {
  if (!ts.isPropertyAssignment(node) || node.name.getText() !== "modelSpread" || !ts.isObjectLiteralExpression(node.initializer))
    return undefined;
  const from = node.initializer.properties.find((property) => property.name?.getText() === "from");
  return from !== undefined && ts.isPropertyAssignment(from) ? from.initializer : undefined;
}

/**
 * @param {ts.CallExpression} call
 * @param {string} source
 * @returns {Cut[]}
 */
function wordsIn(call, source) {
  const [description] = call.arguments;
  if (description === undefined || !ts.isObjectLiteralExpression(description))
    throw new Error("describeFunction is to be called with the description written out in place");
  return description.properties
    .filter((property) => property.name !== undefined && words.has(property.name.getText()))
    .map((property) => ({ from: property.getFullStart(), to: property.end + (source[property.end] === "," ? 1 : 0) }));
}

/**
 * The functions that take an argument's explanation, with its place: those of the vocabulary, and the file's own whose
 * first parameter is called doc.
 *
 * @param {ts.SourceFile} file
 */
function explainersOf(file) {
  /** @type {Map<string, number>} */
  const places = new Map();
  for (const statement of file.statements) {
    if (ts.isImportDeclaration(statement) && /\/vocabulary"$/.test(statement.moduleSpecifier.getText())) {
      const names = statement.importClause?.namedBindings;
      if (names !== undefined && ts.isNamedImports(names))
        for (const { name } of names.elements) places.set(name.text, name.text === "list" ? 1 : 0);
    }
    if (ts.isVariableStatement(statement)) {
      for (const { name, initializer } of statement.declarationList.declarations) {
        if (initializer !== undefined && ts.isArrowFunction(initializer) && initializer.parameters[0]?.name.getText() === "doc")
          places.set(name.getText(), 0);
      }
    }
  }
  // Their first argument names a quantity; the explanation stands in an object.
  places.delete("number");
  return places;
}

/**
 * The text of a `doc` property or of an explainer's argument.
 *
 * @param {ts.Node} node
 * @param {Map<string, number>} explainers
 */
function explanationIn(node, explainers) {
  const place = ts.isCallExpression(node) ? explainers.get(node.expression.getText()) : undefined;
  const text =
    ts.isPropertyAssignment(node) && node.name.getText() === "doc"
      ? node.initializer
      : ts.isCallExpression(node) && place !== undefined
        ? node.arguments[place]
        : undefined;
  return text !== undefined && (ts.isStringLiteralLike(text) || ts.isTemplateExpression(text)) ? text : undefined;
}

/**
 * What is cut with a larger piece needs no cut of its own.
 *
 * @param {Cut[]} cuts
 */
const outermost = (cuts) =>
  cuts
    .filter((cut) => !cuts.some((other) => other !== cut && other.from <= cut.from && other.to >= cut.to))
    .sort((one, other) => one.from - other.from);
