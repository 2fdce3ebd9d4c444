import type { Batches } from "./use-batches";

/** Which batch a screen is about; says so when the workbook has none. */
export function BatchChoice({ batches, label = "Batch" }: { readonly batches: Batches; readonly label?: string }) {
  const { workbook, problem, chosen, choose, refresh } = batches;
  if (problem)
    return (
      <p class="bad" role="alert">
        {problem}
      </p>
    );
  if (!workbook) return <p role="status">Looking at the workbook…</p>;
  return (
    <>
      {workbook.unreadable.map((reason) => (
        <p key={reason} class="bad">
          {reason}
        </p>
      ))}
      {workbook.batches.length === 0 ? (
        <p class="hint">There is no batch sheet in this workbook yet: write one under Plan, New batch.</p>
      ) : (
        <div class="field">
          <label for="which-batch">{label}</label>
          <select
            id="which-batch"
            value={chosen?.sheetName}
            onFocus={() => void refresh()}
            onChange={(event) => choose(event.currentTarget.value)}
          >
            {workbook.batches.map(({ sheetName }) => (
              <option key={sheetName} value={sheetName}>
                {sheetName}
              </option>
            ))}
          </select>
        </div>
      )}
    </>
  );
}
