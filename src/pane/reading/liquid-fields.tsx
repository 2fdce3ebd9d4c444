import { formLabel } from "../../workbook/batch/derived/form-fields";
import type { On } from "../../workbook/batch/describe/field";
import { unitOf } from "../../workbook/batch/describe/measures";
import { batchFields } from "../../workbook/batch/fields";
import { NumberField } from "../fields/number-field";
import { ChoiceField } from "../fields/choice-field";
import { TextField } from "../fields/text-field";
import type { ReadingFields } from "./reading-fields";

interface LiquidFieldsProps {
  readonly fields: ReadingFields;
  readonly on: On;
  readonly change: (part: Partial<ReadingFields>) => void;
}

/** Before the yeast the volume belongs to the reading: together they tell whether the malt can give it. */
export function WortFields({ fields, on, hasTopUp, change }: LiquidFieldsProps & { readonly hasTopUp: boolean }) {
  const before = hasTopUp && fields.sampled === "before";
  return (
    <>
      {hasTopUp && (
        <ChoiceField
          legend="The sample was drawn"
          name="sampled"
          value={fields.sampled}
          choices={[
            ["after", "with the top-up water mixed in"],
            ["before", "before the top-up water"],
          ]}
          onChange={(sampled) => change({ sampled })}
        />
      )}
      <NumberField
        id="volume"
        label={before ? `Wort without the water, ${unitOf("volume", on.units)}` : formLabel(batchFields.wort.fields.volume, on)}
        value={fields.volume}
        onInput={(volume) => change({ volume })}
      />
      {before && (
        <NumberField id="top-up" label={formLabel(batchFields.topUp, on)} value={fields.topUp} onInput={(topUp) => change({ topUp })} />
      )}
    </>
  );
}

export function BeerFields({ fields, on, change }: LiquidFieldsProps) {
  const { beerTemperature, when } = batchFields.readings.columns;
  return (
    <>
      <NumberField
        id="beer-temperature"
        label={formLabel(beerTemperature, on)}
        value={fields.beerTemperature}
        onInput={(typed) => change({ beerTemperature: typed })}
      />
      <TextField
        id="when"
        type="datetime-local"
        label={formLabel(when, on)}
        value={fields.when}
        onInput={(typed) => change({ when: typed })}
      />
    </>
  );
}
