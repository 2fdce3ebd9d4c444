import { mentionsIn } from "../../functions/mentions";
import { helpPagePath } from "../../functions/metadata";
import { escapeHtml } from "./html";

/** The address of a function's page as the other help pages name it. */
export const pageBeside = (id: string): string => helpPagePath(id).replace("help/", "");

/** A text as HTML in which other functions are linked to their pages. */
export const linked = (text: string, own: string): string =>
  mentionsIn(text, own)
    .map((piece) => ("id" in piece ? `<a href="${pageBeside(piece.id)}">GYLE.${piece.id}</a>` : escapeHtml(piece.words)))
    .join("");
