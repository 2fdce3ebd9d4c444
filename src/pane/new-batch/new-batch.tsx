import { useEffect, useRef, useState } from "preact/hooks";
import { tradeWords } from "../../functions/trade-words";
import { useOpenScreen } from "../parts/open-screen";
import { TermNotes } from "../parts/term-notes";
import { ChoiceField } from "../fields/choice-field";
import { readForm, usualTopUp, usualVolume, volumeWord, type FormValues, type Problems } from "./form-values";
import { TextField } from "../fields/text-field";
import type { Done } from "../sheets/in-workbook";
import { Outcome } from "../sheets/outcome";
import { firstUnits, rememberUnits } from "../parts/first-units";
import { today } from "../fields/typed";
import { useKits } from "./use-kits";
import { blocksFor, type BlockKey } from "../../workbook/batch/fields/blocks";
import { BlocksField } from "../grow/blocks-field";
import { writeBatch } from "./write-batch";

/** What a beginner meets on this screen for the first time. */
const newWords = [tradeWords.wort, tradeWords.extract, tradeWords.steep, tradeWords.mash, tradeWords.topUp, tradeWords.fermenter];

function firstValues(): FormValues {
  const units = firstUnits();
  return {
    name: "",
    brewedOn: today(),
    volume: usualVolume[units],
    units,
    method: "extract",
    boil: "whole",
    topUp: usualTopUp[units],
    recipe: "empty",
  };
}

/** The first screen: asks what a batch sheet needs to know and writes it. */
export function NewBatch() {
  const [values, setValues] = useState(firstValues);
  const [problems, setProblems] = useState<Problems>({});
  const [outcome, setOutcome] = useState<Done<string>>();
  const [busy, setBusy] = useState(false);
  const [blocks, setBlocks] = useState<readonly BlockKey[]>([]);
  const { kits, kit, chooseKit } = useKits();
  const form = useRef<HTMLFormElement>(null);
  const openScreen = useOpenScreen();
  const change = (part: Partial<FormValues>) => setValues((before) => ({ ...before, ...part }));

  // The first field that is wrong gets the focus, so that a screen reader says what to correct.
  useEffect(() => form.current?.querySelector<HTMLElement>("[aria-invalid=true]")?.focus(), [problems]);

  const write = async (wanted: FormValues) => {
    const { choices, problems: found } = readForm(wanted);
    setProblems(found);
    setOutcome(undefined);
    if (!choices) return;
    setBusy(true);
    const result = await writeBatch(choices, wanted.recipe, kit, blocks);
    setBusy(false);
    setOutcome(result);
    if (result.kind !== "done") return;
    rememberUnits(wanted.units);
    setValues((before) => ({ ...before, name: "" }));
  };

  /** Usual amounts follow the unit system until the brewer has typed their own. */
  const changeUnits = (units: FormValues["units"]) =>
    change({
      units,
      ...(values.volume === usualVolume[values.units] && { volume: usualVolume[units] }),
      ...(values.topUp === usualTopUp[values.units] && { topUp: usualTopUp[units] }),
    });

  const writeUnder = (freeName: string) => {
    change({ name: freeName });
    void write({ ...values, name: freeName });
  };

  return (
    <form
      ref={form}
      class="screen"
      noValidate
      aria-labelledby="new-batch-title"
      onSubmit={(event) => {
        event.preventDefault();
        void write(values);
      }}
    >
      <h1 id="new-batch-title">New batch</h1>
      <p class="lead">One sheet from the water to the first taste, written into this workbook.</p>
      <TextField
        id="name"
        label="Name of the batch"
        value={values.name}
        problem={problems.name}
        hint="The sheet gets this name."
        onInput={(name) => change({ name })}
      />
      <TextField
        id="brewed-on"
        type="date"
        label="Brewed on"
        value={values.brewedOn}
        problem={problems.brewedOn}
        onInput={(brewedOn) => change({ brewedOn })}
      />
      <ChoiceField
        legend="Units"
        name="units"
        value={values.units}
        choices={[
          ["metric", "Metric: L, kg, °C"],
          ["us", "US: gal, lb, °F"],
        ]}
        onChange={changeUnits}
      />
      <TextField
        id="volume"
        inputMode="decimal"
        label={`Beer in the fermenter, ${volumeWord[values.units]}`}
        value={values.volume}
        problem={problems.volume}
        onInput={(volume) => change({ volume })}
      />
      <ChoiceField
        legend="Where the sugar comes from"
        name="method"
        value={values.method}
        choices={[
          ["extract", "Malt extract, some grain steeped"],
          ["all-grain", "Grain, mashed; extract may be added"],
        ]}
        onChange={(method) => change({ method })}
      />
      <details class="field">
        <summary>Extract, steep, mash: what are they?</summary>
        <TermNotes terms={newWords} />
      </details>
      <ChoiceField
        legend="In the kettle"
        name="boil"
        value={values.boil}
        choices={[
          ["whole", "The whole volume boils"],
          ["part", "A part boils; water tops it up"],
        ]}
        onChange={(boil) => change({ boil })}
      />
      {values.boil === "part" && (
        <TextField
          id="top-up"
          inputMode="decimal"
          label={`Top-up water, ${volumeWord[values.units]}`}
          value={values.topUp}
          problem={problems.topUp}
          onInput={(topUp) => change({ topUp })}
        />
      )}
      {kits.length > 0 && (
        <ChoiceField
          legend="Kit"
          name="kit"
          value={kit?.name ?? ""}
          choices={[...kits.map(({ name }) => [name, name] as const), ["", "Usual values of a beginner's kit"] as const]}
          onChange={chooseKit}
        />
      )}
      <ChoiceField
        legend="Recipe"
        name="recipe"
        value={values.recipe}
        choices={[
          ["empty", "Blank, I fill in my own"],
          ["example", "An example pale ale to change"],
        ]}
        onChange={(recipe) => change({ recipe })}
      />
      <details>
        <summary>More on the sheet</summary>
        <BlocksField
          legend="Beyond the usual sheet; any of it can be added later"
          offered={blocksFor(values.method)}
          chosen={blocks}
          onChange={setBlocks}
        />
      </details>
      <button type="submit" class="main-action" disabled={busy}>
        {busy ? "Writing…" : "Write the batch sheet"}
      </button>
      <Outcome outcome={outcome} onFreeName={writeUnder}>
        {(sheetName) => (
          <>
            <p>“{sheetName}” is in the workbook.</p>
            <p>Fill in its underlined cells from the top; the shaded ones calculate.</p>
            <p>
              On the day itself: Brew,{" "}
              <button type="button" class="link" onClick={() => openScreen("Brew day")}>
                Brew day
              </button>
            </p>
          </>
        )}
      </Outcome>
    </form>
  );
}
