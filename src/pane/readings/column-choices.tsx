import type { TextTable } from "../../workbook/exchange/readings-file/parse-table";
import type { LogChoices } from "../../workbook/exchange/readings-file/recognise";
import { ChoiceField } from "../fields/choice-field";

interface ColumnChoicesProps {
  readonly table: TextTable;
  readonly choices: LogChoices;
  readonly orderMatters: boolean;
  readonly orderUnsure: boolean;
  readonly onChange: (part: Partial<LogChoices>) => void;
}

/** What the columns were taken for, to be confirmed or changed, with the first lines in sight. */
export function ColumnChoices({ table, choices, orderMatters, orderUnsure, onChange }: ColumnChoicesProps) {
  const column = (id: "when" | "time" | "gravity" | "temperature", label: string, none: string) => (
    <div class="field">
      <label for={`column-${id}`}>{label}</label>
      <select id={`column-${id}`} value={choices[id]} onChange={(event) => onChange({ [id]: Number(event.currentTarget.value) })}>
        <option value={-1}>{none}</option>
        {table.heading.map((heading, index) => (
          <option key={index} value={index}>
            {`${heading}: ${table.rows[0]?.[index] ?? ""}`}
          </option>
        ))}
      </select>
    </div>
  );
  return (
    <>
      <h2>What the columns mean</h2>
      <div class="scrolls" tabIndex={0} role="region" aria-label="First lines of the table">
        <table class="figures">
          <caption>First of {table.rows.length} rows</caption>
          <thead>
            <tr>
              {table.heading.map((heading, index) => (
                <th key={index} scope="col">
                  {heading}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {table.rows.slice(0, 3).map((row, index) => (
              <tr key={index}>
                {table.heading.map((_, position) => (
                  <td key={position}>{row[position] ?? ""}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {column("when", "When", "choose a column")}
      {column("time", "Time of day, if it has a column of its own", "none")}
      {column("gravity", "Gravity", "choose a column")}
      {column("temperature", "Temperature of the beer", "none")}
      <ChoiceField
        legend="Gravity is in"
        name="log-scale"
        value={choices.scale}
        choices={[
          ["SG", "Specific gravity: 1.048 or 1048"],
          ["P", "°Plato: 12"],
        ]}
        onChange={(scale) => onChange({ scale })}
      />
      {choices.temperature >= 0 && (
        <ChoiceField
          legend="Temperature is in"
          name="log-degrees"
          value={choices.degrees}
          choices={[
            ["C", "°C"],
            ["F", "°F"],
          ]}
          onChange={(degrees) => onChange({ degrees })}
        />
      )}
      {orderMatters && (
        <ChoiceField
          legend={orderUnsure ? "Dates: either order fits; which is it?" : "Dates such as 5/9/2026 have"}
          name="log-order"
          value={choices.order}
          choices={[
            ["day first", "the day first"],
            ["month first", "the month first"],
          ]}
          onChange={(order) => onChange({ order })}
        />
      )}
      <ChoiceField
        legend="Times without a zone are"
        name="log-zone"
        value={choices.zone}
        choices={[
          ["wall", "what the clock on the wall showed"],
          ["utc", "universal time (UTC), to be turned into this computer's"],
        ]}
        onChange={(zone) => onChange({ zone })}
      />
      <div class="field">
        <label class="choice">
          <input type="checkbox" checked={choices.corrected} onChange={(event) => onChange({ corrected: event.currentTarget.checked })} />
          The device has corrected for temperature already
        </label>
      </div>
    </>
  );
}
