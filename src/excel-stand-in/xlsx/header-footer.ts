import type { HeaderFooterPlace } from "../excel/sheet-extras";

type Kind = "Header" | "Footer";
const PLACES = { L: "left", C: "center", R: "right" } as const;

/** A file keeps the three parts of a header in one text: `&LLeft&CMiddle&RRight`. Text before a mark is the middle. */
export function headerFooterFromFile(text: string | undefined, kind: Kind): Partial<Record<HeaderFooterPlace, string>> {
  const result: Partial<Record<HeaderFooterPlace, string>> = {};
  let place: HeaderFooterPlace = `center${kind}`;
  // "&&" stands for one "&", so it is kept together; "&L", "&C" and "&R" change the place.
  for (const [piece] of (text ?? "").matchAll(/&&|&[\s\S]|[^&]+/g)) {
    const change = PLACES[piece.slice(1).toUpperCase() as keyof typeof PLACES];
    if (piece.startsWith("&") && change) place = `${change}${kind}`;
    else result[place] = (result[place] ?? "") + piece;
  }
  return result;
}

export function headerFooterToFile(parts: Partial<Record<HeaderFooterPlace, string>> | undefined, kind: Kind): string | undefined {
  const text = (Object.entries(PLACES) as ["L" | "C" | "R", "left" | "center" | "right"][])
    .map(([mark, place]) => [mark, parts?.[`${place}${kind}`]] as const)
    .filter(([, part]) => part)
    .map(([mark, part]) => `&${mark}${part}`)
    .join("");
  return text === "" ? undefined : text;
}
