import { useState } from "preact/hooks";
import type { Filled } from "../../workbook/batch/contents";
import { bottleKinds } from "../../core/pack/bottle-kinds";
import { primingSugars as sugars } from "../../core/pack/priming";
import type { PackagingInput } from "../../workbook/brewing/companion/packaging/packaging-form";
import { unitsOf } from "../../workbook/batch/read/batch-sheets";
import type { NamedCells } from "../../workbook/grid/read/named-cells";
import { dayField, fieldMoment } from "../fields/moments";
import { NumberField, numberIn, textOf } from "../fields/number-field";
import { SelectField } from "../fields/select-field";
import { ChoiceField } from "../fields/choice-field";
import { TextField } from "../fields/text-field";

interface PackagingFieldsProps {
  readonly input: PackagingInput;
  readonly sheet: NamedCells;
  readonly change: (part: Partial<PackagingInput>) => void;
}

type NumberKey = { [Key in keyof PackagingInput]: PackagingInput[Key] extends Filled<number> ? Key : never }[keyof PackagingInput];

export function PackagingFields({ input, sheet, change }: PackagingFieldsProps) {
  const us = unitsOf(sheet) === "us";
  const degrees = us ? "°F" : "°C";
  const number = (key: NumberKey, label: string, hint?: string) => (
    <Typed
      key={key}
      id={key}
      label={label}
      first={input[key]}
      {...(hint !== undefined && { hint })}
      onNumber={(value) => change({ [key]: value })}
    />
  );
  return (
    <>
      <ChoiceField
        legend="Into"
        name="into"
        value={input.into}
        choices={[
          ["bottles", "Bottles"],
          ["keg", "A keg"],
        ]}
        onChange={(into) => change({ into })}
      />
      <TextField
        id="packaged-on"
        type="date"
        label="On"
        value={dayField(input.packagedOn)}
        onInput={(text) => change({ packagedOn: fieldMoment(text) })}
      />
      {number("carbonation", "Carbonation, volumes of CO2", "2.2 to 2.6 suits most ales.")}
      {input.into === "bottles" ? (
        <>
          {number("warmestBeer", `Warmest since it finished, ${degrees}`)}
          <SelectField id="sugar" label="Sugar" value={input.sugar} choices={sugars} onChange={(sugar) => change({ sugar })} />
          {number("bottleVolume", `One bottle holds, ${us ? "US fl oz" : "mL"}`)}
          <SelectField
            id="bottle-kind"
            label="Kind of bottle"
            value={input.bottleKind}
            choices={bottleKinds}
            onChange={(bottleKind) => change({ bottleKind })}
          />
          {number("warmestStorage", `Warmest place they will stand, ${degrees}`)}
          {number("loss", `Lost in racking, ${us ? "US gal" : "L"}`)}
          {number("conditioning", `Conditioned at, ${degrees}`)}
          {number("bottlesFilled", "Bottles filled", "Once you have counted them.")}
        </>
      ) : (
        number("kegTemperature", `Keg stands at, ${degrees}`)
      )}
    </>
  );
}

/** Keeps what is typed, so that "2." may become "2.4". */
function Typed({
  id,
  label,
  first,
  hint,
  onNumber,
}: {
  readonly id: string;
  readonly label: string;
  readonly first: Filled<number>;
  readonly hint?: string;
  readonly onNumber: (value: Filled<number>) => void;
}) {
  const [text, setText] = useState(textOf(first));
  return (
    <NumberField
      id={id}
      label={label}
      value={text}
      {...(hint !== undefined && { hint })}
      onInput={(typed) => {
        setText(typed);
        onNumber(numberIn(typed));
      }}
    />
  );
}
