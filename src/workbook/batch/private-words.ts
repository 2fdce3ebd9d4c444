/**
 * The convention of the whole workbook: what begins with the word "private", in any case of letters, stays with its owner
 * whenever something is shared. Signs before the word do not open it ("(private) …", "- private: …", a formula's ="…), and
 * a longer word is another word ("Privateer"). Excel puts an author's name on a line of its own before what a cell's note says.
 */
export const isPrivate = (words: unknown): boolean =>
  typeof words === "string" && /^[^\p{L}\p{N}]*private(?!\p{L})/iu.test(words.replace(/^[^\n:]{1,60}:\s*\n/, ""));
