import { useState } from "preact/hooks";
import type { CommasUnsure, TextTable } from "../../workbook/exchange/readings-file/parse-table";
import { ChoiceField } from "../fields/choice-field";

interface CommaChoiceProps {
  readonly commas: CommasUnsure;
  readonly onTable: (table: TextTable) => void;
}

/** What the commas of a table mean, where both would do. Nothing is taken for granted: 1,050 read as two numbers would be a gravity of 1. */
export function CommaChoice({ commas, onTable }: CommaChoiceProps) {
  const [meant, setMeant] = useState<"" | "decimal" | "separating">("");
  const first = (table: TextTable): string => (table.rows[0] ?? []).join(" | ");
  return (
    <>
      <p role="alert">This table has a comma between its columns, and perhaps inside its numbers. Please say which is meant.</p>
      <ChoiceField
        legend="The first row is"
        name="log-commas"
        value={meant}
        choices={[
          ["decimal", `${first(commas.decimal)} (a comma inside numbers)`],
          ["separating", `${first(commas.separating)} (each comma between columns)`],
        ]}
        onChange={(choice) => {
          setMeant(choice);
          if (choice !== "") onTable(commas[choice]);
        }}
      />
    </>
  );
}
