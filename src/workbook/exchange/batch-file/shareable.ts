import type { BatchContents } from "../../batch/contents";
import { mapTexts } from "../../batch/derived/map-texts";
import { withoutPrices } from "../../batch/derived/parts";
import { batchFields } from "../../batch/fields";
import { isPrivate } from "../../batch/private-words";

export interface ShareChoices {
  readonly prices: boolean;
}

/** A batch as others may see it. */
export function shareable(batch: BatchContents, { prices }: ShareChoices): BatchContents {
  const open = mapTexts(batchFields, batch, (text) => (isPrivate(text) ? "" : text));
  const withoutEmptyRemark = <Line extends { readonly remark?: string }>({ remark, ...line }: Line) =>
    ({ ...line, ...(remark ? { remark } : {}) }) as Line;
  const shown = { ...open, malt: open.malt.map(withoutEmptyRemark), hops: open.hops.map(withoutEmptyRemark) };
  return prices ? shown : withoutPrices(batchFields, shown);
}
