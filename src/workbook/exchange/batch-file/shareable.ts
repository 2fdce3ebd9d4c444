import type { BatchContents } from "../../batch/contents";
import { mapTexts } from "../../batch/map-texts";
import { isPrivate } from "../../batch/private-words";

export interface ShareChoices {
  readonly prices: boolean;
}

/** A batch as others may see it. */
export function shareable(batch: BatchContents, { prices }: ShareChoices): BatchContents {
  const open = mapTexts(batch, (text) => (isPrivate(text) ? "" : text));
  const withoutEmptyRemark = <Line extends { readonly remark?: string }>({ remark, ...line }: Line) =>
    ({ ...line, ...(remark ? { remark } : {}) }) as Line;
  const lines = { malt: open.malt.map(withoutEmptyRemark), hops: open.hops.map(withoutEmptyRemark) };
  if (prices) return { ...open, ...lines };
  return {
    ...open,
    malt: lines.malt.map((line) => ({ ...line, cost: "" })),
    hops: lines.hops.map((line) => ({ ...line, cost: "" })),
    yeast: { ...open.yeast, cost: "" },
  };
}
