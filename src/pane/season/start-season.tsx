import { insertSeason } from "../../workbook/sheets/season/insert-season";
import { inWorkbook } from "../sheets/in-workbook";
import { StartSheet } from "../sheets/start-sheet";

/** Asks for the units and writes the season sheet. */
export function StartSeason({ onWritten }: { readonly onWritten: () => void }) {
  return (
    <StartSheet
      sheetName="Season"
      what="the season sheet"
      unitsLegend="Show volumes and colours in"
      unitChoices={[
        ["metric", "Metric: L, EBC"],
        ["us", "US: gal, SRM"],
      ]}
      hint="Each batch keeps its own units on its own sheet."
      write={(sheetName, units) =>
        inWorkbook("The season sheet was not written, and the workbook is as it was.", (context) =>
          insertSeason(context, { sheetName, units }),
        )
      }
      onWritten={onWritten}
    />
  );
}
