/** What goes along and what stays, in one place for everything that is shared. */
export function PricesField({ prices, onChange }: { readonly prices: boolean; readonly onChange: (prices: boolean) => void }) {
  return (
    <div class="field">
      <label class="choice">
        <input type="checkbox" checked={prices} onChange={(event) => onChange(event.currentTarget.checked)} />
        Include prices
      </label>
      <p class="hint">Words that begin with “private” are always left out.</p>
    </div>
  );
}
