import { useState } from "preact/hooks";
import { isoDay } from "../../workbook/grid/words/day-number";
import { batchesInWorkbook } from "../../workbook/sheets/batches-in-workbook";
import { recipesWithVersions, type RecipeVersions } from "../../workbook/sheets/season/versions";
import { GoTo } from "../parts/go-to";
import { inWorkbook } from "../sheets/in-workbook";

/** Batches of one recipe, and what changed from one to the next. */
export function Versions() {
  const [recipes, setRecipes] = useState<readonly RecipeVersions[]>();
  const [problem, setProblem] = useState("");
  const [busy, setBusy] = useState(false);
  const look = async () => {
    setBusy(true);
    const done = await inWorkbook("The batches could not be read.", async (context) =>
      recipesWithVersions((await batchesInWorkbook(context)).batches),
    );
    setBusy(false);
    setProblem(done.kind === "done" ? "" : done.message);
    if (done.kind === "done") setRecipes(done.result);
  };
  return (
    <>
      <h2>Versions of a recipe</h2>
      <p class="hint">Batches of one name, a number at its end aside, and what changed from each to the next.</p>
      <button type="button" disabled={busy} onClick={() => void look()}>
        {busy ? "Looking…" : "Compare"}
      </button>
      <div aria-live="polite">
        {problem !== "" && <p class="bad">{problem}</p>}
        {recipes?.length === 0 && <p>No two batches of this workbook have one name.</p>}
      </div>
      {recipes?.map(({ name, versions }) => (
        <section key={name} aria-label={name}>
          <h3>{name}</h3>
          <ol>
            {versions.map(({ sheetName, brewedOn, changes, reached }, index) => (
              <li key={sheetName}>
                <p>
                  <GoTo place={{ sheet: sheetName, range: "A1" }} label={sheetName} onProblem={setProblem} />{" "}
                  {brewedOn > 0 && isoDay(brewedOn)}
                  {reached === "" ? "" : `: ${reached}`}
                </p>
                {index > 0 && changes.length === 0 && <p>The same recipe as before.</p>}
                {changes.length > 0 && (
                  <ul>
                    {changes.map((change) => (
                      <li key={change}>{change}</li>
                    ))}
                  </ul>
                )}
              </li>
            ))}
          </ol>
        </section>
      ))}
    </>
  );
}
