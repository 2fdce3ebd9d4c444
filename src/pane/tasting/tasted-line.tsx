import type { Limits } from "../../workbook/batch/describe/field";
import type { TastingInput } from "../../workbook/brewing/companion/tasting/tasting-form";
import { numberIn, textOf } from "../fields/number-field";
import "./tasting.css";

type Line = TastingInput["lines"][number];

export interface TastedLineProps extends Line {
  readonly index: number;
  /** What is judged: "Looks". */
  readonly what: string;
  /** Lowest and highest. */
  readonly scores: Limits;
  readonly onChange: (part: Partial<Line>) => void;
}

/** A score and words for one thing. Its name is seen once; a screen reader hears it with each of the two fields. */
export function TastedLine({ index, what, scores: [lowest, highest], score, words, onChange }: TastedLineProps) {
  return (
    <div class="field tasted">
      <label for={`score-${index}`}>
        {what}
        <span class="unseen">
          , {lowest} to {highest}
        </span>
      </label>
      <select id={`score-${index}`} value={textOf(score)} onChange={(event) => onChange({ score: numberIn(event.currentTarget.value) })}>
        <option value="">–</option>
        {Array.from({ length: highest - lowest + 1 }, (_, step) => lowest + step).map((one) => (
          <option key={one} value={String(one)}>
            {one}
          </option>
        ))}
      </select>
      <input
        id={`words-${index}`}
        type="text"
        autocomplete="off"
        aria-label={`${what}, in words`}
        value={words}
        onInput={(event) => onChange({ words: event.currentTarget.value })}
      />
    </div>
  );
}
