import { readFileSync, readdirSync } from "node:fs";
import { join, relative } from "node:path";
import ts from "typescript";

/**
 * Every small slip that a person could have made in `src/core`: a constant a tenth or one too large, operands of − / **
 * or neighbouring arguments the wrong way round, < for <=, the smaller for the larger. All of them are compiled in
 * beside the right text and asleep; `globalThis.awake` is the number of the one that is awake. Loops count their turns,
 * since a slip can keep one from ever ending.
 */
export interface Mutant {
  readonly id: number;
  readonly file: string;
  readonly line: number;
  readonly was: string;
  readonly is: string;
  /** Worked out while the module is loaded: its module must be loaded again. */
  readonly whileLoading: boolean;
}

const root = new URL("../../", import.meta.url).pathname;
export const coreFiles: readonly string[] = readdirSync(join(root, "src/core"), { recursive: true, encoding: "utf8" })
  .filter((file) => file.endsWith(".ts"))
  .sort()
  .map((file) => `src/core/${file}`);

const swapped: Readonly<Record<string, string>> = { "<": "<=", "<=": "<", ">": ">=", ">=": ">" };
/** Adding one to a large constant is no slip that anybody makes, and a tenth more of a hair for the sake of rounding changes nothing. */
const [largestCounted, hair] = [100, 1e-6];

/** Text with all mutants of a file asleep in it, and their list; numbers go on from `first`. */
export function withMutants(file: string, text: string, first: number): { readonly code: string; readonly mutants: readonly Mutant[] } {
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  const mutants: Mutant[] = [];
  const plain = (node: ts.Node): string => node.getText(source);
  const sleep = (node: ts.Node, is: string, otherwise: string): string => {
    const id = first + mutants.length;
    mutants.push({
      id,
      file,
      line: source.getLineAndCharacterOfPosition(node.getStart(source)).line + 1,
      was: plain(node).slice(0, 70),
      is: is.slice(0, 70),
      whileLoading: !inFunction(node),
    });
    return `(globalThis.awake === ${id} ? (${is}) : ${otherwise})`;
  };

  function write(node: ts.Node): string {
    if (ts.isTypeNode(node) || ts.isImportDeclaration(node) || ts.isTypeAliasDeclaration(node) || ts.isInterfaceDeclaration(node))
      return plain(node);
    let code = children(node);
    if (ts.isNumericLiteral(node) && isValue(node)) {
      const value = Number(node.text);
      if (value > hair) code = sleep(node, `${plain(node)} * 1.1`, code);
      if (Math.abs(value) <= largestCounted) code = sleep(node, `${plain(node)} + 1`, code);
    } else if (ts.isBinaryExpression(node)) {
      const sign = plain(node.operatorToken);
      const [left, right] = [plain(node.left), plain(node.right)];
      if (["-", "/", "**"].includes(sign) && left !== right) code = sleep(node, `(${right}) ${sign} (${left})`, `(${code})`);
      if (swapped[sign]) code = sleep(node, `${left} ${swapped[sign]} ${right}`, `(${code})`);
    } else if (ts.isCallExpression(node)) {
      const callee = plain(node.expression);
      const [one, other] = node.arguments;
      if (callee === "Math.min" || callee === "Math.max")
        code = sleep(node, plain(node).replace(callee, callee === "Math.min" ? "Math.max" : "Math.min"), code);
      else if (one && other && ts.isIdentifier(one) && ts.isIdentifier(other))
        code = sleep(node, `${callee}(${[other, one, ...node.arguments.slice(2)].map(plain).join(", ")})`, code);
    }
    return code;
  }

  function children(node: ts.Node): string {
    let [code, at] = ["", node.getStart(source)];
    node.forEachChild((child) => {
      const isTurn = ts.isIterationStatement(node, false) && child === node.statement;
      code += `${text.slice(at, child.getStart(source))}${isTurn ? `{ globalThis.turn?.(); ${write(child)} }` : write(child)}`;
      at = child.end;
    });
    return code + text.slice(at, node.end);
  }

  let [code, at] = ["", 0];
  for (const statement of source.statements) {
    code += text.slice(at, statement.getStart(source)) + write(statement);
    at = statement.end;
  }
  return { code: code + text.slice(at), mutants };
}

/** Not a place in a list, nor the number of digits in a message. */
function isValue({ parent }: ts.Node): boolean {
  if (ts.isCallExpression(parent)) return !(ts.isPropertyAccessExpression(parent.expression) && parent.expression.name.text === "toFixed");
  return !ts.isElementAccessExpression(parent) && !(ts.isPropertyAssignment(parent) && ts.isNumericLiteral(parent.name));
}

function inFunction(node: ts.Node): boolean {
  for (let at: ts.Node | undefined = node.parent; at; at = at.parent) if (ts.isFunctionLike(at)) return true;
  return false;
}

let cached: ReadonlyMap<string, ReturnType<typeof withMutants>> | undefined;
export function allCoreMutants(): ReadonlyMap<string, ReturnType<typeof withMutants>> {
  if (cached) return cached;
  const found = new Map<string, ReturnType<typeof withMutants>>();
  let next = 1;
  for (const file of coreFiles) {
    const made = withMutants(file, readFileSync(join(root, file), "utf8"), next);
    next += made.mutants.length;
    found.set(file, made);
  }
  return (cached = found);
}

/** For vitest's configuration: hands out the core's files with their mutants. */
export const mutantsPlugin = {
  name: "mutants",
  enforce: "pre" as const,
  transform: (_: string, id: string): { code: string; map: null } | undefined => {
    const made = allCoreMutants().get(relative(root, id.split("?")[0] ?? ""));
    return made && { code: made.code, map: null };
  },
};
