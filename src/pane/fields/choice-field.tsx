export interface ChoiceFieldProps<Choice extends string> {
  readonly legend: string;
  readonly name: string;
  readonly value: Choice;
  readonly choices: readonly (readonly [Choice, string])[];
  readonly onChange: (choice: Choice) => void;
}

/** One of a few, all in sight. */
export function ChoiceField<Choice extends string>({ legend, name, value, choices, onChange }: ChoiceFieldProps<Choice>) {
  return (
    <fieldset class="field">
      <legend>{legend}</legend>
      {choices.map(([choice, label]) => (
        <label key={choice} class="choice">
          <input type="radio" name={name} value={choice} checked={choice === value} onChange={() => onChange(choice)} />
          {label}
        </label>
      ))}
    </fieldset>
  );
}
