import { useState } from "preact/hooks";
import type { UnitSystem } from "../../functions/quantities";
import type { BatchInWorkbook } from "../../workbook/sheets/batches-in-workbook";
import { shortened } from "../../workbook/grid/words/shortened";
import { converted } from "../../workbook/batch/describe/measures";
import { ChoiceField } from "../fields/choice-field";
import { howMuchBeer, isVolume, volumeWord } from "../new-batch/form-values";
import { TextField } from "../fields/text-field";
import { today, typedDay, typedNumber } from "../fields/typed";

/** What a batch made from another one is called, when it is brewed, and how much of it in which units; as typed and as read. */
export function useCopy({ contents, sheetName }: BatchInWorkbook, ending: string) {
  const [name, setName] = useState(shortened(contents.batchName || sheetName, `, ${ending}`));
  const [brewedOn, setBrewedOn] = useState(today);
  const [units, setUnits] = useState<UnitSystem>(contents.units);
  const [volume, setVolume] = useState(String(Number(contents.volume.toFixed(2))));
  const typed = typedNumber(volume);
  /** Undefined while it cannot be brewed so. */
  const amount = typed !== undefined && isVolume(typed) ? typed : undefined;
  const changeUnits = (chosen: UnitSystem): void => {
    setUnits(chosen);
    if (typed !== undefined && chosen !== units) setVolume(String(Number(converted("volume", typed, units, chosen).toFixed(2))));
  };
  return { name, setName, brewedOn, setBrewedOn, units, changeUnits, volume, setVolume, amount, day: typedDay(brewedOn) };
}

export interface CopyFieldsProps {
  readonly id: string;
  readonly copy: ReturnType<typeof useCopy>;
  readonly nameLabel: string;
  readonly unitsLegend: string;
  readonly volumeLabel: string;
}

export function CopyFields({ id, copy, nameLabel, unitsLegend, volumeLabel }: CopyFieldsProps) {
  return (
    <>
      <TextField id={`${id}-name`} label={nameLabel} value={copy.name} onInput={copy.setName} />
      <TextField
        id={`${id}-day`}
        type="date"
        label="To be brewed on"
        value={copy.brewedOn}
        problem={copy.day === undefined ? "Which day? A date such as 2026-09-05." : undefined}
        onInput={copy.setBrewedOn}
      />
      <ChoiceField
        legend={unitsLegend}
        name={`${id}-units`}
        value={copy.units}
        choices={[
          ["metric", "Metric: L, kg, °C"],
          ["us", "US: gal, lb, °F"],
        ]}
        onChange={copy.changeUnits}
      />
      <TextField
        id={`${id}-volume`}
        inputMode="decimal"
        label={`${volumeLabel}, ${volumeWord[copy.units]}`}
        value={copy.volume}
        problem={copy.amount === undefined ? howMuchBeer(copy.units) : undefined}
        onInput={copy.setVolume}
      />
    </>
  );
}
