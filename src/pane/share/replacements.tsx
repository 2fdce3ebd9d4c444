import { factFormats, factHeadings } from "../../workbook/sheets/club/facts-plan";
import type { FactName } from "../../workbook/sheets/club/club-facts";
import type { Standing } from "../../workbook/sheets/club/replace-on-club";
import { dayShort } from "../../workbook/grid/words/day-words";

interface ReplacementsProps {
  readonly standing: readonly Standing[];
  /** How many batches are new to the sheet. */
  readonly others: number;
  readonly busy: boolean;
  readonly onAgreed: () => void;
}

/** What taking in a member's batch anew would change on the club sheet, and the button that says yes to it. */
export function Replacements({ standing, others, busy, onAgreed }: ReplacementsProps) {
  return (
    <div class="note" role="status">
      {standing.map(({ entry: { member, batch }, row, changes }) => (
        <div key={row}>
          <p>
            “{batch.batchName || "A batch without a name"}” of {member} stands there already.{" "}
            {changes.length === 0 ? "Nothing about it has changed." : "In its row would change:"}
          </p>
          {changes.length > 0 && (
            <ul>
              {changes.map(({ fact, was, becomes }) => (
                <li key={fact}>
                  {factHeadings[fact]}: {shown(fact, was)} becomes {shown(fact, becomes)}
                </li>
              ))}
            </ul>
          )}
        </div>
      ))}
      <p class="hint">What you keep beside the rows, and notes at cells, stay.</p>
      <button type="button" disabled={busy} onClick={onAgreed}>
        {standing.length === 1 ? "Replace it" : `Replace these ${standing.length}`}
        {others > 0 && ` and add the other${others === 1 ? "" : ` ${others}`}`}
      </button>
    </div>
  );
}

const digits: Partial<Record<string, number>> = { gravity: 4, two: 2, one: 1 };

function shown(fact: FactName, value: number | string | boolean): string {
  if (value === "") return "nothing";
  if (typeof value !== "number") return `“${String(value)}”`;
  const format = factFormats[fact];
  return format === "date" ? dayShort(value) : value.toFixed(digits[format ?? ""] ?? 0);
}
