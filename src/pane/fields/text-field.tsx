export interface TextFieldProps {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly problem?: string | undefined;
  readonly hint?: string | undefined;
  readonly type?: "text" | "date" | "datetime-local";
  readonly inputMode?: "text" | "decimal";
  readonly onInput: (value: string) => void;
}

/** A labelled line to type into; its problem stands below it and is read out with it. */
export function TextField({ id, label, value, problem, hint, type = "text", inputMode = "text", onInput }: TextFieldProps) {
  const help = problem ?? hint;
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <input
        id={id}
        type={type}
        inputMode={inputMode}
        value={value}
        autocomplete="off"
        aria-invalid={problem !== undefined}
        aria-describedby={help ? `${id}-help` : undefined}
        onInput={(event) => onInput(event.currentTarget.value)}
      />
      {help && (
        <p id={`${id}-help`} class={problem ? "problem" : "hint"}>
          {help}
        </p>
      )}
    </div>
  );
}
