import type { UnitSystem } from "../../functions/quantities";
import { ChoiceField } from "../fields/choice-field";
import { NumberField } from "../fields/number-field";
import type { ReadingFields } from "./reading-fields";

interface InstrumentFieldsProps {
  readonly fields: ReadingFields;
  readonly units: UnitSystem;
  readonly change: (part: Partial<ReadingFields>) => void;
}

/** What was read off, on which instrument. */
export function InstrumentFields({ fields, units, change }: InstrumentFieldsProps) {
  const degrees = units === "us" ? "°F" : "°C";
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
          <ChoiceField
            legend="Scale"
            name="scale"
            value={fields.scale}
            choices={[
              ["SG", "SG, such as 1.048"],
              ["P", "°P, such as 12"],
            ]}
            onChange={(scale) => change({ scale })}
          />
          <NumberField
            id="reading"
            label={`Reading, ${fields.scale === "SG" ? "SG" : "°P"}`}
            value={fields.reading}
            onInput={(reading) => change({ reading })}
          />
          <NumberField
            id="sample-temperature"
            label={`Sample, ${degrees}`}
            value={fields.sampleTemperature}
            onInput={(sampleTemperature) => change({ sampleTemperature })}
          />
        </>
      ) : (
        <>
          <NumberField id="reading" label="Reading now, °Brix" value={fields.reading} onInput={(reading) => change({ reading })} />
          {fields.liquid === "beer" && (
            <NumberField
              id="original-brix"
              label="Reading before the yeast, °Brix"
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
