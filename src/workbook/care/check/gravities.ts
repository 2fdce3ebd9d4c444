import { leaveThem } from "../../../functions/pack/check-words";
import { callScalar } from "../../../functions/call";
import { functionNamed } from "../../../functions/registry";
import { columnLetters } from "../../grid/plan/addresses";
import type { CellValue, NamedCells } from "../../grid/read/named-cells";
import type { Finding } from "./finding";

interface Line {
  readonly row: number;
  readonly when: CellValue;
  readonly reading: CellValue;
  readonly scale: CellValue;
  readonly gravity: CellValue;
}

/** What a hydrometer may differ between two readings of the same beer: a line and a half (common practice). */
const readingNoise = 0.0015;
/** Swallows the rounding of 1.0415 − 1.040 in binary. */
const hair = 1e-9;

/** Readings in the wrong scale, gravities that rise, beer packaged before it had finished. */
export function gravities(sheet: NamedCells): Finding[] {
  const { sheetName } = sheet;
  const area = sheet.area("readings");
  const readingColumn = area.from.column;
  const lines: Line[] = Array.from({ length: area.to.row - area.from.row + 1 }, (_, index) => area.from.row + index).map((row) => ({
    row,
    when: sheet.at(row, sheet.area("reading_times").from.column),
    reading: sheet.at(row, readingColumn),
    scale: sheet.at(row, readingColumn + 1),
    gravity: sheet.at(row, sheet.area("gravities").from.column),
  }));
  const cell = (row: number): string => `${columnLetters(readingColumn)}${row}`;
  return [
    ...scaleFinding(sheetName, sheet.range("og_reading").split(":")[0] ?? "", sheet.value("og_reading"), sheet.value("og_scale")),
    ...lines.flatMap(({ row, reading, scale }) => scaleFinding(sheetName, cell(row), reading, scale)),
    ...rising(sheetName, lines, cell),
    ...packagedTooEarly(sheet, lines),
  ];
}

function scaleFinding(sheet: string, address: string, reading: CellValue, scale: CellValue): Finding[] {
  if (typeof reading !== "number" || reading === 0) return [];
  const look = (words: string): Finding[] => [{ sheet, address, weight: "look", words }];
  if (scale === "P") {
    if (reading >= 0.97 && reading <= 1.2) return look(`${reading.toFixed(3)} °P? That looks like specific gravity: set the scale to SG.`);
    return reading < -5 || reading > 45 ? look(`${String(reading)} °P is no wort's: check the reading.`) : [];
  }
  if (reading > 1.2 && reading <= 45)
    return look(`${String(reading)} looks like degrees Plato, but its scale says SG: set the scale to P.`);
  if (reading > 900 && reading < 1200) return look(`Write ${(reading / 1000).toFixed(3)} instead of ${String(reading)}.`);
  return reading < 0.97 || reading > 1.2 ? look(`A gravity of ${String(reading)} is no beer's: check the reading.`) : [];
}

const measured = (lines: readonly Line[]): { row: number; when: number; gravity: number }[] =>
  lines
    .flatMap(({ row, when, gravity }) => (typeof when === "number" && typeof gravity === "number" ? [{ row, when, gravity }] : []))
    .sort((one, other) => one.when - other.when);

function rising(sheet: string, lines: readonly Line[], cell: (row: number) => string): Finding[] {
  const inTime = measured(lines);
  return inTime.flatMap(({ row, gravity }, index): Finding[] => {
    const before = inTime[index - 1];
    if (!before || gravity - before.gravity <= readingNoise + hair) return [];
    return [
      {
        sheet,
        address: cell(row),
        weight: "look",
        words: `Gravity rose from ${before.gravity.toFixed(3)} to ${gravity.toFixed(3)}, which beer cannot do: check scale, temperature and date, unless you added sugar or fruit.`,
        insteadOf: "Course of the gravity",
      },
    ];
  });
}

/** Judged by what was known on the day of packaging, whatever was measured later. */
function packagedTooEarly(sheet: NamedCells, lines: readonly Line[]): Finding[] {
  const packagedOn = sheet.number("packaged_on");
  if (packagedOn === "" || packagedOn <= 0) return [];
  const known = measured(lines).filter(({ when }) => when < Math.floor(packagedOn) + 1);
  const filled = (name: string): number | null => {
    const value = sheet.has(name) ? sheet.number(name) : "";
    return value === "" ? null : value;
  };
  const verdict =
    known.length === 0
      ? ""
      : callScalar(functionNamed("LOG.STEADY"), [
          known.map(({ when }) => [when]),
          known.map(({ gravity }) => [gravity]),
          0.001,
          ...["fg_expected", "og", "count_from"].map(filled),
        ]);
  if (verdict === "steady") return [];
  const address = sheet.range("packaged_on").split(":")[0] ?? "";
  return [
    {
      sheet: sheet.sheetName,
      address,
      weight: "stop",
      words: `Packaged before two readings a day apart agreed${typeof verdict === "string" && verdict !== "" ? ` (the readings up to then say “${verdict}”)` : ""}: what is left may ferment in the glass and burst it. Bottles: ${leaveThem}`,
      insteadOf: "Has it finished?",
    },
  ];
}
