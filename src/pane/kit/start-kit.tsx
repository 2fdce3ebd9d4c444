import { useState } from "preact/hooks";
import { insertKit } from "../../workbook/sheets/kit/insert-kit";
import { TextField } from "../fields/text-field";
import { inWorkbook } from "../sheets/in-workbook";
import { StartSheet } from "../sheets/start-sheet";

const usualName = "My kit";

/** Asks for a kit's name and the units, and writes the kit sheet. */
export function StartKit({ onWritten }: { readonly onWritten: () => void }) {
  const [name, setName] = useState(usualName);
  return (
    <StartSheet
      sheetName="Kit"
      what="the kit sheet"
      before={
        <TextField
          id="kit-name"
          label="Name of the kit"
          value={name}
          hint="Batches are counted to a kit by its name; more kits can be added on the sheet."
          onInput={setName}
        />
      }
      unitsLegend="Units of the kit sheet"
      unitChoices={[
        ["metric", "Metric: L, °C"],
        ["us", "US: gal, °F"],
      ]}
      write={(sheetName, units) =>
        inWorkbook("The kit sheet was not written, and the workbook is as it was.", (context) =>
          insertKit(context, { sheetName, units, kitNames: [name.trim() || usualName] }),
        )
      }
      onWritten={onWritten}
    />
  );
}
