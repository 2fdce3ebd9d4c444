import type { BatchContents } from "../../contents";
import { blockFields, blockKeys, blocksFor, checkName, type BlockKey } from "../../fields/blocks";
import { blockLine } from "../../rules/blocks";
import { putCheck } from "../../rules/checks";
import type { UnitWords } from "../../unit-words";
import { section, workings, type BatchBuilder, type BatchLines } from "../fields";
import { beforeBoil } from "./before-boil";
import type { Block } from "./block";
import { kegLine } from "./keg-line";
import { lateHops } from "./late-hops";
import { mashRunOff } from "./mash";
import { partsOfWort } from "./parts";
import { starter } from "./starter";
import { waterTreatment } from "./water";

/** The sections that every sheet has. */
const usualSections = 10;

const blocks: Readonly<Record<BlockKey, Block & { readonly hint: string }>> = {
  waterTreatment: { ...waterTreatment, hint: "What your water holds, what you add, and what comes of it" },
  mashRunOff: { ...mashRunOff, hint: "Further rests and what lifts the mash to them; what runs off, and what it tells" },
  beforeBoil: { ...beforeBoil, hint: "Measure while the wort can still be corrected; the kit learns from it" },
  lateHops: { ...lateHops, hint: "Which model the bitterness goes by; stand and dry hops" },
  starter: { ...starter, hint: "Grows the yeast at hand to what the batch wants" },
  partsOfWort: { ...partsOfWort, hint: "Half into a keg and half into bottles, or two yeasts: each part is judged by itself" },
  kegLine: { ...kegLine, hint: "How many kegs, what they bear, and a line that pours calmly" },
};

/** What each block is for, in words for the brewer. */
export const blockHints = Object.fromEntries(Object.entries(blocks).map(([key, { hint }]) => [key, hint])) as Readonly<
  Record<BlockKey, string>
>;

/** Blocks of a batch, in the order of a new sheet; `order` goes first, which is that of a sheet that stands already. */
export const blocksOf = (contents: BatchContents, order: readonly BlockKey[] = []): readonly BlockKey[] =>
  [...new Set([...order, ...blockKeys])].filter((key) => contents[key] !== undefined && blocksFor(contents.method).includes(key));

/**
 * What the brewer has chosen beyond the usual sheet, below it: whoever adds a block moves nothing. Returns the rows at which pages begin.
 *
 * @param room how tall the rows of a page may be together, in points
 */
export function putBlocks(
  b: BatchBuilder,
  contents: BatchContents,
  lines: BatchLines,
  words: UnitWords,
  order: readonly BlockKey[],
  room: number,
): number[] {
  const pages: number[] = [];
  const chosen = blocksOf(contents, order);
  chosen.forEach((key, index) => {
    if (index > 0) b.gap();
    const { put, beside, hint } = blocks[key];
    const { label, area } = blockFields[key];
    const first = b.row;
    section(b, usualSections + 1 + index, label, hint);
    const top = b.row;
    put(b, contents, lines, words);
    // The rows end with the gap that parts sections: the check closes the block.
    b.row -= 1;
    if (beside) workings(b, beside(contents, words), top);
    putCheck(b, blockLine(key, { ...contents, blocks: chosen }, words), checkName(key));
    b.row += 1;
    b.name(area, `A${first}:I${b.row - 1}`);
    const page = pages.at(-1);
    if (page === undefined || b.heightOf(page, b.row - 1) > room) pages.push(first);
  });
  return pages;
}
