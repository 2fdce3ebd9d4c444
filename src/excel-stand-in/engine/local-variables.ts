import type { FormulaPiece } from "./formula-text";

/** Names that a formula's LET and LAMBDA declare (lower case). They hide defined names of the same spelling. */
export function localVariables(pieces: readonly FormulaPiece[]): Set<string> {
  const declared = new Set<string>();
  const open: { word: string; argument: number }[] = [];
  const solid = pieces.filter((piece) => piece.source.trim() !== "");
  solid.forEach((piece, index) => {
    const before = solid[index - 1]?.source;
    if (piece.source === "(") open.push({ word: before?.toUpperCase() ?? "", argument: 0 });
    else if (piece.source === ")") open.pop();
    const call = open.at(-1);
    if (piece.source === "," && call) call.argument++;
    if (piece.kind !== "name") return;
    const alone = (before === "(" || before === ",") && solid[index + 1]?.source === ",";
    const declares = call?.word === "LAMBDA" || (call?.word === "LET" && call.argument % 2 === 0);
    if (alone && declares) declared.add(piece.name.toLowerCase());
  });
  return declared;
}
