import { insertStores } from "../../workbook/sheets/stores/insert-stores";
import { inWorkbook } from "../sheets/in-workbook";
import { StartSheet } from "../sheets/start-sheet";

/** Asks for the units and writes the stores sheet. */
export function StartStores({ onWritten }: { readonly onWritten: () => void }) {
  return (
    <StartSheet
      sheetName="Stores"
      what="the stores sheet"
      unitsLegend="Units of the stores"
      unitChoices={[
        ["metric", "Metric: kg, g, °C"],
        ["us", "US: lb, oz, °F"],
      ]}
      hint="Batches in other units draw from them all the same."
      write={(sheetName, units) =>
        inWorkbook("The stores sheet was not written, and the workbook is as it was.", (context) =>
          insertStores(context, { sheetName, units, today: "=TODAY()" }),
        )
      }
      onWritten={onWritten}
    />
  );
}
