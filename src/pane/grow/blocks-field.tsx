import { blockFields, type BlockKey } from "../../workbook/batch/fields/blocks";
import { blockHints } from "../../workbook/batch/sheet/blocks";

interface BlocksFieldProps {
  readonly legend: string;
  /** Those that may be chosen. */
  readonly offered: readonly BlockKey[];
  readonly chosen: readonly BlockKey[];
  readonly onChange: (chosen: readonly BlockKey[]) => void;
}

/** Blocks of a batch sheet to tick, each with what it is for. */
export function BlocksField({ legend, offered, chosen, onChange }: BlocksFieldProps) {
  const toggle = (key: BlockKey) => onChange(chosen.includes(key) ? chosen.filter((one) => one !== key) : [...chosen, key]);
  return (
    <fieldset class="field">
      <legend>{legend}</legend>
      {offered.map((key) => (
        <label key={key} class="choice">
          <input type="checkbox" checked={chosen.includes(key)} onChange={() => toggle(key)} />
          <span>
            {blockFields[key].label}
            <span class="hint below">{blockHints[key]}</span>
          </span>
        </label>
      ))}
    </fieldset>
  );
}
