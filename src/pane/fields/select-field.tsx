/** One of several, where there is no room for all of them. */
export function SelectField({
  id,
  label,
  value,
  choices,
  hint,
  onChange,
}: {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly choices: readonly string[];
  readonly hint?: string | undefined;
  readonly onChange: (value: string) => void;
}) {
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <select
        id={id}
        value={value}
        aria-describedby={hint ? `${id}-help` : undefined}
        onChange={(event) => onChange(event.currentTarget.value)}
      >
        {choices.map((choice) => (
          <option key={choice} value={choice}>
            {choice === "" ? "–" : choice}
          </option>
        ))}
      </select>
      {hint && (
        <p id={`${id}-help`} class="hint">
          {hint}
        </p>
      )}
    </div>
  );
}
