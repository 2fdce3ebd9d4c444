import type { UnitSystem } from "../../functions/quantities";
import { NumberField } from "../fields/number-field";
import { ChoiceField } from "../fields/choice-field";
import { TextField } from "../fields/text-field";
import type { ReadingFields } from "./reading-fields";

interface LiquidFieldsProps {
  readonly fields: ReadingFields;
  readonly units: UnitSystem;
  readonly change: (part: Partial<ReadingFields>) => void;
}

const gallons = (units: UnitSystem): string => (units === "us" ? "US gal" : "L");

/** Before the yeast the volume belongs to the reading: together they tell whether the malt can give it. */
export function WortFields({ fields, units, hasTopUp, change }: LiquidFieldsProps & { readonly hasTopUp: boolean }) {
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
        label={`${before ? "Wort without the water" : "In the fermenter"}, ${gallons(units)}`}
        value={fields.volume}
        onInput={(volume) => change({ volume })}
      />
      {before && (
        <NumberField id="top-up" label={`Top-up water, ${gallons(units)}`} value={fields.topUp} onInput={(topUp) => change({ topUp })} />
      )}
    </>
  );
}

export function BeerFields({ fields, units, change }: LiquidFieldsProps) {
  return (
    <>
      <NumberField
        id="beer-temperature"
        label={`Beer in the fermenter, ${units === "us" ? "°F" : "°C"}`}
        value={fields.beerTemperature}
        onInput={(beerTemperature) => change({ beerTemperature })}
      />
      <TextField id="when" type="datetime-local" label="When" value={fields.when} onInput={(when) => change({ when })} />
    </>
  );
}
