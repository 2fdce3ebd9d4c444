import { useEffect, useState } from "preact/hooks";
import { namesOfTasters, tastingSheets } from "../../workbook/sheets/club/blind-tasting";
import { clubSheets } from "../../workbook/sheets/club/club-sheet";
import type { NamedCells } from "../../workbook/grid/read/named-cells";
import { inWorkbook } from "../sheets/in-workbook";
import { DrawCodes } from "./draw-codes";
import { ScoresIn } from "./scores-in";
import { ScoreSheetsOut } from "./score-sheets-out";

interface Found {
  readonly clubs: readonly NamedCells[];
  readonly tastings: readonly NamedCells[];
}

/** A club's evening: codes drawn, score sheets out, scores in. */
export function BlindTasting() {
  const [found, setFound] = useState<Found>();
  const [problem, setProblem] = useState<string>();
  const [chosen, setChosen] = useState<string>();

  const look = async (choose?: string) => {
    const done = await inWorkbook("The workbook could not be read.", async (context) => ({
      clubs: await clubSheets(context),
      tastings: await tastingSheets(context),
    }));
    setProblem(done.kind === "done" ? undefined : done.message);
    if (done.kind !== "done") return;
    setFound(done.result);
    setChosen((before) => choose ?? before);
  };
  useEffect(() => {
    void look();
  }, []);

  const tasting = found?.tastings.find(({ sheetName }) => sheetName === chosen) ?? found?.tastings.at(-1);
  return (
    <section class="screen" aria-labelledby="blind-tasting-title">
      <h1 id="blind-tasting-title">Blind tasting</h1>
      <p class="lead">Codes instead of names, a score sheet for each taster, and whether the tasters agree more than chance would.</p>
      {problem && (
        <p class="bad" role="alert">
          {problem}
        </p>
      )}
      <h2>Draw the codes</h2>
      {found && found.clubs.length === 0 && (
        <p class="note">The beers come from a club sheet, and this workbook has none yet: make one in Share, Club.</p>
      )}
      {found && found.clubs.length > 0 && <DrawCodes clubs={found.clubs} onDrawn={(name) => void look(name)} />}
      {tasting && (
        <>
          <h2>Score sheets out</h2>
          {found && found.tastings.length > 1 && (
            <div class="field">
              <label for="tasting-chosen">Tasting</label>
              <select id="tasting-chosen" value={tasting.sheetName} onChange={(event) => setChosen(event.currentTarget.value)}>
                {found.tastings.map(({ sheetName }) => (
                  <option key={sheetName} value={sheetName}>
                    {sheetName}
                  </option>
                ))}
              </select>
            </div>
          )}
          <ScoreSheetsOut
            key={`out-${tasting.sheetName}`}
            sheetName={tasting.sheetName}
            tasters={namesOfTasters(tasting).filter((name) => name !== "")}
          />
          <h2>Scores in</h2>
          <ScoresIn key={`in-${tasting.sheetName}`} sheetName={tasting.sheetName} />
        </>
      )}
    </section>
  );
}
