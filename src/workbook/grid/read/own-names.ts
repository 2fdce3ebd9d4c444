/**
 * A sheet's own names. Excel may list the workbook's among them (OfficeDev/office-js issue 1011), and one of those may be called like
 * one of the sheet's: each is asked where it belongs.
 */
export function loadOwnNames({ names }: Excel.Worksheet): void {
  names.load("items/name,items/formula,items/scope");
}

/** After `loadOwnNames` and a sync. */
export const ownNames = ({ names }: Excel.Worksheet): readonly Excel.NamedItem[] =>
  names.items.filter(({ scope }) => scope === "Worksheet");
