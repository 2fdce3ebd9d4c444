import type { FormulaPiece } from "../engine/formula-text";

interface OpenCall {
  word: string;
  argument: number;
  variables: Set<string>;
}

/**
 * Puts `_xlpm.` before the variables that LET and LAMBDA declare, where they are declared and where they are used.
 * Without it Excel calls the file damaged. A variable is known inside the brackets of its own LET or LAMBDA only.
 */
export function markLocalVariables(pieces: readonly FormulaPiece[]): FormulaPiece[] {
  const open: OpenCall[] = [];
  return pieces.map((piece, index) => {
    if (piece.source === "(") open.push({ word: solid(pieces, index, -1)?.source.toUpperCase() ?? "", argument: 0, variables: new Set() });
    else if (piece.source === ")") open.pop();
    else if (piece.source === "," && open.at(-1)) open.at(-1)!.argument++;
    if (declares(pieces, index, open.at(-1))) open.at(-1)!.variables.add(piece.source.toLowerCase());
    return isVariable(piece, open) ? { ...piece, source: `_xlpm.${piece.source}` } : piece;
  });
}

function declares(pieces: readonly FormulaPiece[], index: number, call: OpenCall | undefined): boolean {
  if (!call || pieces[index]!.kind !== "name" || solid(pieces, index, 1)?.source !== ",") return false;
  const before = solid(pieces, index, -1)?.source;
  if (before !== "(" && before !== ",") return false;
  return call.word === "LAMBDA" || (call.word === "LET" && call.argument % 2 === 0);
}

/** A variable that holds a LAMBDA is used like a function, `scale(2)`: then it is a piece of code, not a name. */
function isVariable(piece: FormulaPiece, open: readonly OpenCall[]): boolean {
  return (piece.kind === "name" || piece.kind === "code") && open.some((call) => call.variables.has(piece.source.toLowerCase()));
}

/** The next piece in a direction that is not blank. */
function solid(pieces: readonly FormulaPiece[], index: number, step: 1 | -1): FormulaPiece | undefined {
  let at = index + step;
  while (pieces[at] && pieces[at]!.source.trim() === "") at += step;
  return pieces[at];
}
