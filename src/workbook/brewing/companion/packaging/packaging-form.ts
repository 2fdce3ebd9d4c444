import type { BatchSheet } from "../../../batch/read/batch-sheets";
import { formCells, typedOn, type FormCell, type Typed } from "../../../batch/derived/form-fields";
import { kitFields } from "../../../batch/fields/kit";
import { packagingFields } from "../../../batch/fields/packaging";
import { madeFor } from "../../../batch/read/batch-contents";
import type { CellValue } from "../../../grid/read/named-cells";

const { otherCost: _, ...ofPackaging } = packagingFields;

/** What is asked on the day of packaging: that section of the sheet, without the bill, and what the kit says of the bottles. */
export const packagingForm = { ...ofPackaging, bottleVolume: kitFields.bottleVolume, bottlingLoss: kitFields.bottlingLoss };

/** The packaging cells of the sheet as a form holds them, in the sheet's units. */
export type PackagingInput = Typed<typeof packagingForm>;

export const packagingIn = (sheet: BatchSheet): PackagingInput => typedOn(packagingForm, sheet);

/** Every cell of the form with what it holds. */
export const packagingCells = (sheet: BatchSheet, input: PackagingInput): FormCell[] => formCells(packagingForm, input, madeFor(sheet));

/** The cells that the form would change: only those whose figure differs from the sheet's. */
export const packagingChanges = (sheet: BatchSheet, input: PackagingInput): FormCell[] =>
  packagingCells(sheet, input).filter(({ name, content }) => content !== "" && sheet.value(name) !== (content as CellValue));
