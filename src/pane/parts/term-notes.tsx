import type { TradeWord } from "../../functions/trade-words";

/** Terms of the trade where they first stand, each with its short note. */
export const TermNotes = ({ terms }: { readonly terms: readonly TradeWord[] }) => (
  <>
    {terms.map(({ term, means }) => (
      <p key={term} class="hint">
        <b>{term}:</b> {means}
      </p>
    ))}
  </>
);
