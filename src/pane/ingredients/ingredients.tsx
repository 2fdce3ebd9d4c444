import { useState } from "preact/hooks";
import { unitsOf } from "../../workbook/batch/read/batch-sheets";
import { unitWords } from "../../workbook/batch/unit-words";
import {
  addTypical,
  fillTypical,
  offeredOn,
  typicalWords,
  unfilledLines,
} from "../../workbook/brewing/companion/ingredients/typical-lines";
import { listed } from "../../workbook/grid/words/listed";
import { BatchScreen, type Batch } from "../companion/batch-screen";
import { NumberField, numberIn } from "../fields/number-field";
import { OutcomeLine } from "../companion/outcome-line";
import { SelectField } from "../fields/select-field";
import { useChange } from "../companion/use-change";

export const Ingredients = () => (
  <BatchScreen title="Typical malts">{(batch) => <IngredientForm key={batch.sheet.sheetName} {...batch} />}</BatchScreen>
);

/** Yield and colour of generic malts, extracts and sugars, for whoever does not know them. */
function IngredientForm({ sheet, reload }: Batch) {
  const offered = offeredOn(sheet);
  const [name, setName] = useState(offered[0]?.name ?? "");
  const [mass, setMass] = useState("");
  const { busy, outcome, make } = useChange(reload);
  const typical = offered.find((one) => one.name === name);
  const unfilled = unfilledLines(sheet);
  return (
    <>
      <p>Typical figures from textbooks. What the sack or the tin says comes first.</p>
      <SelectField
        id="typical-name"
        label="Malt, extract or sugar"
        value={name}
        choices={offered.map((one) => one.name)}
        onChange={setName}
      />
      {typical && <p class="hint">{typicalWords(sheet, typical)}</p>}
      <NumberField
        id="typical-mass"
        label={`Mass, ${unitWords(unitsOf(sheet)).mass}`}
        value={mass}
        hint="May stay empty."
        onInput={setMass}
      />
      <button
        type="button"
        class="main-action"
        disabled={busy || !typical}
        onClick={() => typical && void make((context) => addTypical(context, sheet, { typical, mass: numberIn(mass) }))}
      >
        {busy ? "Writing…" : "Write it into the malt table"}
      </button>
      {unfilled.length > 0 && (
        <section aria-label="Lines that lack a figure">
          <p>These lines lack yield, handling or colour: {listed([...new Set(unfilled.map(({ ingredient }) => `“${ingredient}”`))])}.</p>
          <button type="button" disabled={busy} onClick={() => void make((context) => fillTypical(context, sheet))}>
            Fill in what is typical
          </button>
        </section>
      )}
      <OutcomeLine outcome={outcome}>
        <p class="good">It is in the malt table, in section 3, with a note of its source.</p>
      </OutcomeLine>
    </>
  );
}
