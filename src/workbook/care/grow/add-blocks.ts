import { planVersion } from "../../batch/describe/plan-version";
import { blockFields, type BlockKey } from "../../batch/fields/blocks";
import { batchMark, isBatchSheet, isUnplugged, type BatchSheet } from "../../batch/read/batch-sheets";
import { loadSheet, namedCells } from "../../grid/read/read-sheets";
import { withSecondLook } from "../../grid/read/second-look";
import { ToldInFull } from "../../grid/words/told-in-full";
import { grown, type Growth } from "./grown";
import { writeGrowth } from "./write-growth";

/** A sheet that cannot be given a block, in words for the brewer. It is as it was. */
export class BlockRefused extends ToldInFull {
  constructor(message: string) {
    super(message);
    this.name = "BlockRefused";
  }
}

export interface AddedBlocks {
  readonly sheetName: string;
  /** Where each block begins: "“Before the boil” (A137)". */
  readonly added: readonly string[];
  /** Cells with formulas of the brewer's own, which would follow the block if they were ours: they stay. */
  readonly kept: readonly string[];
}

/**
 * Gives a batch sheet blocks that it does not have: below everything that stands on it, so that nothing moves. Formulas of ours
 * that go by a block follow it from then on; what the brewer typed, a formula of the brewer's own too, is not touched. All or nothing; five
 * `context.sync()` at most.
 *
 * @throws BlockRefused; FunctionsUnknown, with the sheet as it was; otherwise as `writeSurely`
 */
export function addBlocks(context: Excel.RequestContext, sheetName: string, keys: readonly BlockKey[]): Promise<AddedBlocks> {
  return withSecondLook(() => lookAndWrite(context, sheetName, keys));
}

async function lookAndWrite(context: Excel.RequestContext, sheetName: string, keys: readonly BlockKey[]): Promise<AddedBlocks> {
  const sheet = context.workbook.worksheets.getItemOrNullObject(sheetName);
  await context.sync();
  if (sheet.isNullObject) throw new BlockRefused(`There is no sheet “${sheetName}” any more.`);
  const loaded = loadSheet(sheet);
  sheet.protection.load("protected");
  const printed = sheet.pageLayout.getPrintAreaOrNullObject().load("address");
  await context.sync();
  const cells = namedCells(loaded);
  const refusal = whyNot(cells, sheet.protection.protected, keys);
  if (refusal !== undefined) throw new BlockRefused(`“${sheetName}” cannot be given this block: ${refusal}.`);
  const growth = grown(cells, keys);
  await writeGrowth(context, cells, growth, printed.isNullObject ? undefined : printed.address);
  return { sheetName, added: growth.starts.map(({ label, cell }) => `“${label}” (${cell})`), kept: growth.kept };
}

/** Why a sheet cannot be given these blocks; undefined where it can. */
function whyNot(sheet: BatchSheet, isProtected: boolean, keys: readonly BlockKey[]): string | undefined {
  if (isUnplugged(sheet)) return "it is unplugged; plug it back in first (Share, Unplug)";
  if (!isBatchSheet(sheet)) return "it is no batch sheet";
  const version = Number(sheet.value(batchMark));
  if (version > planVersion) return "a newer Gylebook made it; update this one";
  if (version !== planVersion) return "an older Gylebook made it; bring it to today's plan first (Help, Older sheets)";
  if (isProtected) return "it is protected; lift the protection first (Review, Unprotect Sheet)";
  const there = keys.find((key) => sheet.has(blockFields[key].area));
  if (there !== undefined) return `it has “${blockFields[there].label}” already`;
  return undefined;
}

export type { Growth };
