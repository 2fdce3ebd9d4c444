import type { BatchSheet } from "../../workbook/batch/read/batch-sheets";
import { packagingForm, type PackagingInput } from "../../workbook/brewing/companion/packaging/packaging-form";
import { madeFor } from "../../workbook/batch/read/batch-contents";
import { DescribedField } from "../fields/described-field";

interface PackagingFieldsProps {
  readonly input: PackagingInput;
  readonly sheet: BatchSheet;
  readonly change: (part: Partial<PackagingInput>) => void;
}

type Key = keyof PackagingInput;

/** What each way asks for, in this order. */
const first: readonly Key[] = ["into", "packagedOn", "co2Volumes"];
const asked: Readonly<Record<PackagingInput["into"], readonly Key[]>> = {
  bottles: [
    "warmestSinceFermentation",
    "sugar",
    "bottleVolume",
    "bottleKind",
    "warmestStorage",
    "bottlingLoss",
    "conditioningTemperature",
    "bottlesFilled",
  ],
  keg: ["kegTemperature"],
};
const hints: Partial<Record<Key, string>> = { bottlesFilled: "Once you have counted them." };

export const PackagingFields = ({ input, sheet, change }: PackagingFieldsProps) => (
  <>
    {[...first, ...asked[input.into]].map((name) => (
      <DescribedField
        key={name}
        fields={packagingForm}
        name={name}
        on={madeFor(sheet)}
        typed={input}
        hint={hints[name]}
        onChange={change}
      />
    ))}
  </>
);
