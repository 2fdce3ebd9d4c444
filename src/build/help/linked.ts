import { mentionsIn } from "../../functions/mentions";
import { helpPagePath } from "../../functions/metadata";
import { escapeHtml } from "./html";

/** A text as HTML in which other functions are linked to their pages. */
export const linked = (text: string, own: string): string =>
  mentionsIn(text, own)
    .map((piece) => ("id" in piece ? `<a href="${helpPagePath(piece.id).replace("help/", "")}">GYLE.${piece.id}</a>` : escapeHtml(piece.words)))
    .join("");
