/** One of several, where there is no room for all of them. */
export function SelectField({
  id,
  label,
  value,
  choices,
  onChange,
}: {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly choices: readonly string[];
  readonly onChange: (value: string) => void;
}) {
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <select id={id} value={value} onChange={(event) => onChange(event.currentTarget.value)}>
        {choices.map((choice) => (
          <option key={choice} value={choice}>
            {choice === "" ? "–" : choice}
          </option>
        ))}
      </select>
    </div>
  );
}
