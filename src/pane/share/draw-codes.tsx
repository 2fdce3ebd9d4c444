import { useState } from "preact/hooks";
import { beersOfClub, insertTasting, tastersOf } from "../../workbook/sheets/club/blind-tasting";
import { mostBeers } from "../../workbook/sheets/club/tasting-plan";
import type { NamedCells } from "../../workbook/grid/read/named-cells";
import { TextField } from "../fields/text-field";
import { inWorkbook, type Done } from "../sheets/in-workbook";
import { Outcome } from "../sheets/outcome";

/** Which beers of a club sheet are tasted, by whom; the codes are drawn when the sheet is written. */
export function DrawCodes({ clubs, onDrawn }: { readonly clubs: readonly NamedCells[]; readonly onDrawn: (sheetName: string) => void }) {
  const [clubName, setClubName] = useState<string>();
  const [leftOut, setLeftOut] = useState<readonly number[]>([]);
  const [tasters, setTasters] = useState("");
  const [sheetName, setSheetName] = useState("Tasting");
  const [busy, setBusy] = useState(false);
  const [outcome, setOutcome] = useState<Done<string>>();
  const club = clubs.find((one) => one.sheetName === clubName) ?? clubs[0];
  if (!club) return null;
  const all = beersOfClub(club);
  const beers = all.filter((_, index) => !leftOut.includes(index));

  const draw = async (name: string) => {
    setBusy(true);
    const done = await inWorkbook("The codes were not drawn, and the workbook is as it was.", async (context) => {
      await insertTasting(context, { sheetName: name, club, beers, tasters: tastersOf(tasters) });
      return name;
    });
    setBusy(false);
    setOutcome(done);
    if (done.kind === "done") onDrawn(name);
  };

  return (
    <>
      {clubs.length > 1 && (
        <div class="field">
          <label for="tasting-club">Beers of</label>
          <select
            id="tasting-club"
            value={club.sheetName}
            onChange={(event) => {
              setClubName(event.currentTarget.value);
              setLeftOut([]);
            }}
          >
            {clubs.map((one) => (
              <option key={one.sheetName} value={one.sheetName}>
                {one.sheetName}
              </option>
            ))}
          </select>
        </div>
      )}
      <fieldset class="field">
        <legend>Beers that are tasted, {mostBeers} at most</legend>
        {all.map(({ beer, member }, index) => (
          <label key={index} class="choice">
            <input
              type="checkbox"
              checked={!leftOut.includes(index)}
              onChange={(event) => setLeftOut(event.currentTarget.checked ? leftOut.filter((one) => one !== index) : [...leftOut, index])}
            />
            {beer || "A beer without a name"}, {member}
          </label>
        ))}
      </fieldset>
      <div class="field">
        <label for="tasting-tasters">Tasters, one a line</label>
        <textarea id="tasting-tasters" rows={5} value={tasters} onInput={(event) => setTasters(event.currentTarget.value)} />
        <p class="hint">Others can be typed into the sheet later.</p>
      </div>
      <TextField id="tasting-name" label="Name of the tasting sheet" value={sheetName} onInput={setSheetName} />
      <button
        type="button"
        class="main-action"
        disabled={busy || beers.length < 2 || beers.length > mostBeers}
        onClick={() => void draw(sheetName.trim())}
      >
        {busy ? "Drawing…" : `Draw codes for ${beers.length} beers`}
      </button>
      {(beers.length < 2 || beers.length > mostBeers) && <p class="hint">Choose 2 to {mostBeers} beers.</p>}
      <Outcome outcome={outcome} onFreeName={(free) => void draw(free)}>
        {(name) => <p>“{name}” has the codes and the key. Keep it to yourself until every score is in.</p>}
      </Outcome>
    </>
  );
}
