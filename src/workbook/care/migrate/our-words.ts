import { tokenize, tokenTypes } from "@borgar/fx";
import { fingerprint } from "../../exchange/unplug/fingerprint";
import { formerMarks } from "./former-marks";

const former = new Set(formerMarks.split(" "));

/** The same formula further down the sheet: its addresses keep their columns only. */
function withoutRows(content: string): string {
  if (!content.startsWith("=")) return content;
  return tokenize(content, { mergeRefs: true })
    .map(({ type, value }) => (type === tokenTypes.REF_RANGE ? value.replace(/\$?([A-Za-z]+)\$?\d+/g, "$1") : value))
    .join("");
}

export const markOf = (content: string): string => fingerprint(withoutRows(content));

/** Whether a cell holds what some Gylebook once planned there or elsewhere: words and formulas that nobody of the brewer's typed. */
export const isOurs = (content: unknown): boolean => typeof content === "string" && former.has(markOf(content));

/** Whether today's plan says something that no former one said. */
export const isNews = (content: string): boolean => !former.has(markOf(content));
