import type { BatchContents, StepLine, TastingLine } from "./contents";

/**
 * Every text that a brewer typed into a batch goes through `change`; choices from a list, dates and numbers stay. Step
 * formulas (what begins with "=" in a step's words or minutes) are handed to `formula`, which leaves them as they are
 * unless it is given.
 */
export function mapTexts(
  batch: BatchContents,
  change: (text: string) => string,
  formula: (text: string) => string = (text) => text,
): BatchContents {
  const { yeast, tasting, packaging } = batch;
  const remarked = <Line extends { readonly remark?: string }>(line: Line): Line =>
    line.remark === undefined ? line : { ...line, remark: change(line.remark) };
  const cell = (content: StepLine["what"]): StepLine["what"] =>
    typeof content === "number" ? content : content.startsWith("=") ? formula(content) : change(content);
  const tasted = ({ score, words }: TastingLine): TastingLine => ({ score, words: change(words) });
  return {
    ...batch,
    batchName: change(batch.batchName),
    style: change(batch.style),
    salts: change(batch.salts),
    kitName: change(batch.kitName),
    malt: batch.malt.map((line) => remarked({ ...line, ingredient: change(line.ingredient) })),
    hops: batch.hops.map((line) => remarked({ ...line, hop: change(line.hop), form: change(line.form) })),
    yeast: { ...yeast, name: change(yeast.name) },
    ...(batch.steps && {
      steps: batch.steps.map((line) => ({
        ...line,
        what: cell(line.what),
        minutes: cell(line.minutes),
        caution: change(line.caution),
        why: change(line.why),
      })),
    }),
    packaging: { ...packaging, sugar: change(packaging.sugar), bottleKind: change(packaging.bottleKind) },
    tasting: {
      tastedOn: tasting.tastedOn,
      looks: tasted(tasting.looks),
      smells: tasted(tasting.smells),
      tastes: tasted(tasting.tastes),
      feels: tasted(tasting.feels),
      again: tasted(tasting.again),
      notes: change(tasting.notes),
    },
  };
}
