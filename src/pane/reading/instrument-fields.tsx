import { formLabel } from "../../workbook/batch/derived/form-fields";
import type { On } from "../../workbook/batch/describe/field";
import { batchFields } from "../../workbook/batch/fields";
import { ChoiceField } from "../fields/choice-field";
import { ScaleField } from "../fields/scale-field";
import { NumberField } from "../fields/number-field";
import type { ReadingFields } from "./reading-fields";

interface InstrumentFieldsProps {
  readonly fields: ReadingFields;
  readonly on: On;
  readonly change: (part: Partial<ReadingFields>) => void;
}

/** What was read off, on which instrument. */
export function InstrumentFields({ fields, on, change }: InstrumentFieldsProps) {
  const { reading, sampleTemperature } = batchFields.readings.columns;
  return (
    <>
      <ChoiceField
        legend="Instrument"
        name="instrument"
        value={fields.instrument}
        choices={[
          ["hydrometer", "Hydrometer"],
          ["refractometer", "Refractometer"],
        ]}
        onChange={(instrument) => change({ instrument })}
      />
      {fields.instrument === "hydrometer" ? (
        <>
          <ScaleField name="scale" value={fields.scale} onChange={(scale) => change({ scale })} />
          <NumberField
            id="reading"
            label={`${formLabel(reading, on)}, ${fields.scale === "SG" ? "SG" : "°P"}`}
            value={fields.reading}
            onInput={(typed) => change({ reading: typed })}
          />
          <NumberField
            id="sample-temperature"
            label={formLabel(sampleTemperature, on)}
            value={fields.sampleTemperature}
            onInput={(typed) => change({ sampleTemperature: typed })}
          />
        </>
      ) : (
        <>
          <NumberField
            id="reading"
            label={`${formLabel(reading, on)} now, °Brix`}
            value={fields.reading}
            onInput={(typed) => change({ reading: typed })}
          />
          {fields.liquid === "beer" && (
            <NumberField
              id="original-brix"
              label={`${formLabel(batchFields.wort.fields.reading, on)}, °Brix`}
              value={fields.originalBrix}
              hint="Alcohol upsets a refractometer: good to about 0.002. Never bottle on it alone."
              onInput={(originalBrix) => change({ originalBrix })}
            />
          )}
        </>
      )}
    </>
  );
}
