// @ts-check
// Takes the words out of the worksheet functions' descriptions for functions.js: what a cell needs is parameters, result
// and compute. Excel gets the words from functions.json, and the pane has the whole registry in its own bundle.
import ts from "typescript";

const words = new Set(["summary", "equation", "sources", "examples", "cautions"]);

/** @param {string} source */
export default function withoutWords(source) {
  const file = ts.createSourceFile("source.ts", source, ts.ScriptTarget.Latest, true);
  /** @type {{ from: number, to: number }[]} */
  const cuts = [];
  /** @param {ts.Node} node */
  const visit = (node) => {
    if (ts.isCallExpression(node) && node.expression.getText() === "describeFunction") cuts.push(...wordsIn(node, source));
    ts.forEachChild(node, visit);
  };
  visit(file);
  return cuts.reduceRight((text, { from, to }) => text.slice(0, from) + text.slice(to), source);
}

/**
 * @param {ts.CallExpression} call
 * @param {string} source
 */
function wordsIn(call, source) {
  const [description] = call.arguments;
  if (description === undefined || !ts.isObjectLiteralExpression(description)) throw new Error("describeFunction is to be called with the description written out in place");
  return description.properties
    .filter((property) => property.name !== undefined && words.has(property.name.getText()))
    .map((property) => ({ from: property.getFullStart(), to: property.end + (source[property.end] === "," ? 1 : 0) }));
}
