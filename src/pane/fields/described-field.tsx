import { useState } from "preact/hooks";
import { formLabel, formProblem, type FormFields, type Typed } from "../../workbook/batch/derived/form-fields";
import { figureDoubt } from "../../workbook/batch/derived/figure-doubts";
import { noteOf, type On } from "../../workbook/batch/describe/field";
import type { Filled } from "../../workbook/batch/contents";
import { ChoiceField } from "./choice-field";
import { dayField, fieldMoment } from "./moments";
import { NumberField, numberIn, textOf } from "./number-field";
import { SelectField } from "./select-field";
import { TextField } from "./text-field";

interface DescribedFieldProps<F extends FormFields> {
  readonly fields: F;
  readonly name: keyof F & string;
  readonly on: On;
  readonly typed: Typed<F>;
  /** Left out: the note of its cell. */
  readonly hint?: string | undefined;
  readonly onChange: (part: Partial<Typed<F>>) => void;
}

/** A field of the batch as a form asks for it: what it is called, its unit, its choices and its note are those of its description. */
export function DescribedField<F extends FormFields>({ fields, name, on, typed, hint, onChange }: DescribedFieldProps<F>) {
  const field = fields[name]!;
  const change = (value: number | string) => onChange({ [name]: value } as unknown as Partial<Typed<F>>);
  const value = typed[name] as number | string;
  const said = { id: name, label: formLabel(field, on), hint: hint ?? noteOf(field, on) };
  switch (field.kind) {
    case "number":
      return (
        <TypedNumber
          {...said}
          first={value as Filled<number>}
          problem={formProblem(field, value, on) ?? (value === "" ? undefined : figureDoubt(field, Number(value), on))}
          onNumber={change}
        />
      );
    case "moment":
      return <TextField {...said} type="date" value={dayField(value as Filled<number>)} onInput={(text) => change(fieldMoment(text))} />;
    case "choice":
      return (
        <ChoiceField
          legend={said.label}
          name={name}
          value={String(value)}
          choices={field.choices.map((choice) => [choice, choice.charAt(0).toUpperCase() + choice.slice(1)] as const)}
          onChange={change}
        />
      );
    default:
      return field.kind === "text" && field.offers ? (
        <SelectField {...said} value={String(value)} choices={field.offers} onChange={change} />
      ) : (
        <TextField {...said} value={String(value)} onInput={change} />
      );
  }
}

/** Keeps what is typed, so that "2." may become "2.4". */
function TypedNumber({
  first,
  onNumber,
  ...said
}: {
  readonly id: string;
  readonly label: string;
  readonly hint: string | undefined;
  readonly first: Filled<number>;
  readonly problem: string | undefined;
  readonly onNumber: (value: Filled<number>) => void;
}) {
  const [text, setText] = useState(textOf(first));
  return (
    <NumberField
      {...said}
      value={text}
      onInput={(typed) => {
        setText(typed);
        onNumber(numberIn(typed));
      }}
    />
  );
}
