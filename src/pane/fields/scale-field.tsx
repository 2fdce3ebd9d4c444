import type { Scale } from "../../workbook/batch/contents";
import { ChoiceField } from "./choice-field";

/** What a hydrometer is read in. */
export const ScaleField = ({
  name,
  value,
  onChange,
}: {
  readonly name: string;
  readonly value: Scale;
  readonly onChange: (scale: Scale) => void;
}) => (
  <ChoiceField
    legend="Scale"
    name={name}
    value={value}
    choices={[
      ["SG", "SG, such as 1.048"],
      ["P", "°P, such as 12"],
    ]}
    onChange={onChange}
  />
);
