import type { UnpluggedSheet } from "../../workbook/exchange/unplug";
import { newWorkbookWords } from "./new-workbook-words";
import type { Unplugged } from "./unplug-work";

/** What the copies are like: how much still calculates, and what is a value from now on, and why. */
export function UnplugResult({ outcome }: { readonly outcome: Unplugged | undefined }) {
  return (
    <div aria-live="polite" class="outcome">
      {outcome?.kind === "failed" && <p class="bad">{outcome.message}</p>}
      {outcome?.kind === "done" && (
        <>
          <p class="good">
            {outcome.into === "new"
              ? newWorkbookWords(sheets(outcome.copies.length))
              : `${names(outcome.copies)} ${outcome.copies.length === 1 ? "is" : "are"} in the workbook, at the end of the tabs.`}
          </p>
          <p>
            {plural(
              total(outcome.copies, ({ plain }) => plain),
              "formula calculates",
              "formulas calculate",
            )}{" "}
            on without Gylebook;{" "}
            {plural(
              total(outcome.copies, ({ values }) => values.length),
              "is a value",
              "are values",
            )}{" "}
            now and will not follow changes.{" "}
            {plural(
              total(outcome.copies, ({ privateNotes }) => privateNotes),
              "private note",
              "private notes",
            )}{" "}
            left out.
          </p>
          {outcome.copies.some(({ canPlugIn }) => !canPlugIn) && (
            <p class="bad">This Excel cannot write notes, so the copy cannot be plugged in again.</p>
          )}
          {outcome.copies.map(
            ({ copyName, values }) =>
              values.length > 0 && (
                <details key={copyName}>
                  <summary>Values on “{copyName}”</summary>
                  <ul>
                    {values.map(({ cell, reason }) => (
                      <li key={cell}>
                        {cell}: {reason}
                      </li>
                    ))}
                  </ul>
                </details>
              ),
          )}
        </>
      )}
    </div>
  );
}

const total = (copies: readonly UnpluggedSheet[], count: (copy: UnpluggedSheet) => number): number =>
  copies.reduce((sum, copy) => sum + count(copy), 0);
const plural = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;
const sheets = (count: number): string => plural(count, "sheet", "sheets");
const names = (copies: readonly UnpluggedSheet[]): string =>
  copies.length <= 3 ? copies.map(({ copyName }) => `“${copyName}”`).join(" and ") : `${copies.length} unplugged sheets`;
