import { parse, tokenize, tokenTypes, type AstExpression, type Token } from "@borgar/fx";
import { gyleId } from "../formulas";

/** Trees by their text: the same formulas are asked again and again, at every key that is typed into a form. */
const known = new Map<string, AstExpression | undefined>();
const mostKnown = 5000;

/** The tree of a formula or of an argument's text; undefined when it is not one that we understand. */
export function parsed(text: string): AstExpression | undefined {
  if (known.has(text)) return known.get(text);
  if (known.size >= mostKnown) known.clear();
  const tree = taken(text);
  known.set(text, tree);
  return tree;
}

function taken(text: string): AstExpression | undefined {
  try {
    return parse(withoutGaps(tokenize(text.startsWith("=") ? text : `=${text}`, { mergeRefs: true })));
  } catch {
    return undefined;
  }
}

/** A blank may stand between the name of one of our functions and its bracket. */
function withoutGaps(tokens: readonly Token[]): Token[] {
  return tokens
    .filter(
      ({ type }, index) =>
        !(type === tokenTypes.WHITESPACE && tokens[index + 1]?.value === "(" && gyleId(tokens[index - 1]?.value ?? "") !== undefined),
    )
    .map((token, index, kept) =>
      kept[index + 1]?.value === "(" && gyleId(token.value) !== undefined ? { ...token, type: tokenTypes.FUNCTION } : token,
    );
}

/** Every node of a tree, outermost first. */
export function* nodesOf(node: AstExpression): Generator<AstExpression> {
  yield node;
  if (node.type === "CallExpression" || node.type === "UnaryExpression" || node.type === "BinaryExpression") {
    for (const argument of node.arguments) if (argument) yield* nodesOf(argument);
  } else if (node.type === "LetExpression") {
    for (const { init } of node.declarations) if (init) yield* nodesOf(init);
    if (node.body) yield* nodesOf(node.body);
  }
}

/** What LET calls its parts, in small letters, wherever in the formula. */
export function letParts(node: AstExpression): Map<string, AstExpression> {
  const parts = new Map<string, AstExpression>();
  for (const found of nodesOf(node)) {
    if (found.type !== "LetExpression") continue;
    for (const { id, init } of found.declarations) if (init) parts.set(id.name.toLowerCase(), init);
  }
  return parts;
}
