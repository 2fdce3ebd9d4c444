import { registry } from "./registry";

/** A piece of a text: words, or the name of a function as "GYLE.PACK.CHECK". */
export type Piece = { readonly words: string } | { readonly id: string };

const ids = new Set(registry.map(({ id }) => id));

/** A text in pieces, so that the functions it names can be linked to; the one it stands under is left as words. */
export function mentionsIn(text: string, own: string): readonly Piece[] {
  return text.split(/(GYLE\.[A-Z]+\.[A-Z]+)/).flatMap((words): Piece[] => {
    const id = words.replace("GYLE.", "");
    return words === "" ? [] : [words.startsWith("GYLE.") && ids.has(id) && id !== own ? { id } : { words }];
  });
}
