import type { FormulaPiece } from "./formula-text";

/** Excel's own name, in files, for what is written `A1#`. */
export const ANCHOR_ARRAY = "ANCHORARRAY";

/** Writes `A1#` as a call, which the engine and files understand. Names may stand in the place of A1. */
export function callForSpills(pieces: readonly FormulaPiece[], functionName = ANCHOR_ARRAY): FormulaPiece[] {
  const isAnchor = (piece: FormulaPiece | undefined): boolean =>
    piece?.kind === "name" || (piece?.kind === "code" && /(?:^|!)\$?[A-Za-z]{1,3}\$?\d+$/u.test(piece.source));
  return pieces.flatMap((piece, index): FormulaPiece[] => {
    if (piece.source === "#" && isAnchor(pieces[index - 1])) return [];
    if (!isAnchor(piece) || pieces[index + 1]?.source !== "#") return [piece];
    return [{ kind: "code", source: functionName }, { kind: "code", source: "(" }, piece, { kind: "code", source: ")" }];
  });
}
