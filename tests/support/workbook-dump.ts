import type { HeadlessBench } from "../../src/excel-stand-in/headless";

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };
type Record_ = { [key: string]: Json };

/**
 * Everything that somebody could see of the open workbook: sheets in their order and which is in front, contents and looks of cells, sizes,
 * merged cells, names, tables, notes, charts, validations, highlights, print set-up, protection. Not what formulas answer, and none of
 * the ids that the grid gives by chance.
 */
export function workbookDump({ snapshot, host }: HeadlessBench): string[] {
  const { sheetOrder, sheets, styles, resources } = snapshot();
  const nameOf = new Map(sheetOrder.map((id) => [id, String(sheets[id]?.name)]));
  const data = (name: string): Record_ => {
    const text = resources?.find((one) => one.name === name)?.data;
    return text ? (JSON.parse(text) as Record_) : {};
  };
  const notes = data("SHEET_NOTE_PLUGIN");
  const highlights = data("SHEET_CONDITIONAL_FORMATTING_PLUGIN");
  const validations = data("SHEET_DATA_VALIDATION_PLUGIN");
  const tables = data("SHEET_TABLE_PLUGIN");
  const names = Object.values(data("SHEET_DEFINED_NAME_PLUGIN")) as Record_[];
  const extras = (data("GYLE_SHEET_EXTRAS")["sheets"] ?? {}) as Record<string, Record_>;
  const lines = [`in front: ${host.workbook.getActiveSheet().getSheetName()}`];
  // Thousands of cells share a few hundred looks.
  const looks = new Map<string, Look>();
  const lookOf = (s: Json | undefined): Look => {
    if (typeof s !== "string") return lookIn(s, nameOf);
    if (!looks.has(s)) looks.set(s, lookIn(styles[s] as Json, nameOf));
    return looks.get(s)!;
  };
  const say = (what: string, value: unknown): void => {
    const text = canonical(value as Json, nameOf);
    if (text !== "") lines.push(`${what}: ${text}`);
  };
  say(
    "names",
    names
      .filter(({ localSheetId }) => !nameOf.has(String(localSheetId)))
      .map(nameLine)
      .sort(),
  );
  for (const id of sheetOrder) {
    const sheet = sheets[id]!;
    const own = `“${sheet.name}”`;
    lines.push(`sheet ${own}`);
    say(`${own} shown`, [sheet.hidden, sheet.tabColor, sheet.freeze, sheet.showGridlines]);
    for (const [row, columns] of Object.entries(sheet.cellData ?? {})) {
      for (const [column, cell] of Object.entries(columns as Record<string, Record_ | null>)) {
        if (!cell) continue;
        const { f, v, p, s, custom } = cell;
        // A batch's mark is given by chance.
        const content =
          /^[0-9a-z]{12}$/.test(String(v)) && /\d/.test(String(v)) ? "a mark" : f ? `${String(f)}` : v === "" ? null : (v ?? null);
        const look = lookOf(s);
        const parts = [
          content !== null ? `"content":${JSON.stringify(content)}` : "",
          // A formula gives its cell the number format of what it speaks of; on an empty cell nobody sees it.
          look.text !== "" && !(content === null && look.isBareNumber) ? `"look":${look.text}` : "",
          p ? `"p":${canonical(p, nameOf)}` : "",
          // Other marks are the bench's own: how a file stored a formula, or that it came in too early.
          custom && (custom as Record_)["unlocked"] === true ? '"unlocked":true' : "",
        ].filter((part) => part !== "");
        if (parts.length > 0) lines.push(`${own} ${row},${column}: {${parts.join()}}`);
      }
    }
    const sizes = (of: unknown) =>
      Object.entries((of ?? {}) as Record<string, { h?: number; w?: number; hd?: number }>).map(([at, { h, w, hd }]) => [
        at,
        h ?? w ?? null,
        hd || null,
      ]);
    say(
      `${own} rows`,
      sizes(sheet.rowData).filter(([, size, hidden]) => size !== null || hidden !== null),
    );
    say(
      `${own} columns`,
      sizes(sheet.columnData).filter(([, size, hidden]) => size !== null || hidden !== null),
    );
    say(
      `${own} merged`,
      sheet.mergeData?.map(({ startRow, endRow, startColumn, endColumn }) => [startRow, startColumn, endRow, endColumn].join()).sort(),
    );
    say(
      `${own} names`,
      names
        .filter(({ localSheetId }) => localSheetId === id)
        .map(nameLine)
        .sort(),
    );
    say(`${own} notes`, notesIn(notes[id] ?? null).sort());
    say(`${own} highlights`, highlights[id]);
    say(`${own} validations`, ((validations[id] ?? []) as Record_[]).map(ruleLine).sort());
    const tableLooks = (extras[id]?.["tables"] ?? {}) as Record_;
    const ownTables = ((tables[id] as Record_ | undefined)?.["tables"] ?? []) as Record_[];
    say(
      `${own} tables`,
      ownTables.map(
        ({ id: tableId, name, range, columns }) =>
          [String(name).replace(/_\d+$/, ""), range, columns, tableLooks[String(tableId)] ?? null] as Json,
      ),
    );
    const { tables: _, ...others } = extras[id] ?? {};
    say(`${own} more`, others);
  }
  return lines;
}

interface Look {
  readonly text: string;
  /** Nothing but a number format without words. */
  readonly isBareNumber: boolean;
}

function lookIn(style: Json | undefined, nameOf: ReadonlyMap<string, string>): Look {
  const look = style as Record_ | null | undefined;
  const keys = Object.keys(look ?? {}).filter((key) => look?.[key] != null);
  return {
    text: canonical(style, nameOf),
    isBareNumber: keys.join() === "n" && /^0(\.0+)?$/.test(String((look?.["n"] as Record_)["pattern"])),
  };
}

const nameLine = ({ name, formulaOrRefString, comment }: Record_): string =>
  `${String(name)}=${String(formulaOrRefString)} ${String(comment ?? "")}`;

/** A rule and its cells, in whatever blocks and order the grid keeps them. */
function ruleLine({ uid: _, ranges, ...rule }: Record_): string {
  const cells = (ranges as { startRow: number; endRow: number; startColumn: number; endColumn: number }[]).flatMap((range) =>
    Array.from(
      { length: range.endRow - range.startRow + 1 },
      (_2, row) => `${range.startRow + row}:${range.startColumn}-${range.endColumn}`,
    ),
  );
  return JSON.stringify([rule, cells.sort()]);
}

function notesIn(data: Json): string[] {
  if (data === null || typeof data !== "object" || Array.isArray(data)) return [];
  if (typeof data["note"] === "string") return [`${String(data["row"])},${String(data["col"])}: ${data["note"]}`];
  return Object.values(data).flatMap(notesIn);
}

const idKeys = new Set(["id", "rangeId", "cfId", "uid", "sheetId", "unitId", "subUnitId"]);

/** In a fixed order, without what is empty and without ids; "" where nothing is left. */
function canonical(value: Json | undefined, nameOf: ReadonlyMap<string, string>): string {
  const clean = (one: Json | undefined): Json | undefined => {
    if (one === null || one === undefined) return undefined;
    if (Array.isArray(one)) {
      const all = one.map((inner) => clean(inner) ?? null);
      return all.every((inner) => inner === null) ? undefined : all;
    }
    if (typeof one === "object") {
      const entries = Object.entries(one)
        .filter(([key]) => !idKeys.has(key))
        .flatMap(([key, inner]): [string, Json][] => {
          const cleaned = clean(inner);
          return cleaned === undefined ? [] : [[nameOf.get(key) ?? key, cleaned]];
        })
        .sort(([a], [b]) => (a < b ? -1 : 1));
      return entries.length === 0 ? undefined : Object.fromEntries(entries);
    }
    return one;
  };
  const cleaned = clean(value);
  return cleaned === undefined ? "" : JSON.stringify(cleaned);
}

export const isSameDump = (one: readonly string[], other: readonly string[]): boolean =>
  one.length === other.length && one.every((line, index) => line === other[index]);

/** Lines of one dump that the other has not, few of them, for a message. */
export function dumpDifference(before: readonly string[], now: readonly string[]): string {
  const [old, fresh] = [new Set(before), new Set(now)];
  const lines = [
    ...before.filter((line) => !fresh.has(line)).map((line) => `- ${line}`),
    ...now.filter((line) => !old.has(line)).map((line) => `+ ${line}`),
  ];
  return `${lines.length} lines differ: ${lines
    .slice(0, 6)
    .map((line) => line.slice(0, 160))
    .join(" | ")}`;
}
