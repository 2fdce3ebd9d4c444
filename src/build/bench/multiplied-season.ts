import type { IWorkbookData } from "@univerjs/core";

type Resources = Readonly<Record<string, unknown>>;

/** Parts of a snapshot that are kept by the sheet's id. */
const bySheet = ["SHEET_NOTE_PLUGIN", "SHEET_CONDITIONAL_FORMATTING_PLUGIN", "SHEET_DATA_VALIDATION_PLUGIN", "SHEET_TABLE_PLUGIN"];
const idLength = 21;

/**
 * A workbook of many batches, made of the snapshot of one with a single batch sheet "Batch 1" behind an empty sheet: its
 * sheet so many times, each with ids, names, tables and a batch mark of its own, as if every one had been inserted. Written
 * one by one into the grid engine, 300 would take the better part of an hour.
 */
export function multipliedSeason(one: IWorkbookData, batches: number): IWorkbookData {
  const [first = "", original = ""] = one.sheetOrder;
  const read: Record<string, Resources | undefined> = Object.fromEntries(
    (one.resources ?? []).map(({ name, data }) => [name, data === "" ? undefined : (JSON.parse(data) as Resources)]),
  );
  const tables = (read["SHEET_TABLE_PLUGIN"]?.[original] as { readonly tables: readonly { readonly name: string }[] }).tables.map(
    ({ name }) => name,
  );
  const idOf = (number: number): string => original.slice(0, idLength - 3) + String(number).padStart(3, "0");
  const numbers = Array.from({ length: batches }, (_, index) => index + 1);
  const each = <T>(part: T): Record<string, T> =>
    Object.fromEntries(numbers.map((number) => [idOf(number), asNumber(part, number, tables)]));
  const resources = Object.entries(read).map(([name, data]) => ({ name, data: JSON.stringify(multiplied(name, data)) }));

  function multiplied(name: string, data: Resources | undefined): unknown {
    if (bySheet.includes(name)) return each(data?.[original]);
    if (name === "GYLE_SHEET_EXTRAS") return { ...data, sheets: each((data?.["sheets"] as Resources)[original]) };
    if (name !== "SHEET_DEFINED_NAME_PLUGIN") return name === "SHEET_RANGE_THEME_MODEL_PLUGIN" ? {} : data;
    const names = numbers.flatMap((number) => asNumber(Object.values(data ?? {}) as { readonly id: string }[], number, tables));
    return Object.fromEntries(names.map((own) => [own.id, own]));
  }

  return {
    ...one,
    id: `season-of-${batches}`,
    sheetOrder: [first, ...numbers.map(idOf)],
    sheets: { ...(one.sheets[first] && { [first]: one.sheets[first] }), ...each(one.sheets[original]!) },
    resources,
  };
}

/** A part of the first batch's snapshot as the batch of this number would have it. */
function asNumber<T>(part: T, number: number, tables: readonly string[]): T {
  const text = JSON.stringify(part)
    .replace(new RegExp(`"([\\w-]{${idLength - 3}})[\\w-]{3}"`, "gu"), (_, start: string) => `"${start}${String(number).padStart(3, "0")}"`)
    .replaceAll("Batch 1'", `Batch ${number}'`)
    .replaceAll('"Batch 1"', `"Batch ${number}"`)
    .replaceAll('"Number 1"', `"Number ${number}"`)
    .replaceAll('"bench-1"', `"bench-${number}"`)
    .replace(new RegExp(`\\b(${tables.join("|")})\\b`, "gu"), (name) => name.replace(/1$/u, String(number)));
  return JSON.parse(text) as T;
}
