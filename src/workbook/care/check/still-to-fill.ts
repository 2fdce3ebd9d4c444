import type { BatchCell } from "../../batch/fields/cells";
import type { BatchSheet } from "../../batch/read/batch-sheets";
import { columnLetters } from "../../grid/plan/addresses";
import type { Finding } from "./finding";

/** A line begun and not finished stops the whole sum, silently; so does a figure that everything needs. */
export function stillToFill(sheet: BatchSheet): Finding[] {
  const fill = (address: string | undefined, words: string): Finding => ({
    sheet: sheet.sheetName,
    ...(address !== undefined && { address }),
    weight: "fill",
    words,
  });
  const cell = (name: BatchCell): string => sheet.range(name).split(":")[0] ?? "";
  const malt = begunLines(sheet, "malt", ["mass", "yield", "handling", "colour"]);
  const hops = begunLines(sheet, "hops", ["mass", "alpha acid", "minutes left"]);
  const readings = readingLines(sheet);
  return [
    ...(sheet.number("volume") === "" || sheet.number("volume") === 0
      ? [fill(cell("volume"), "How much beer? Without the volume nothing calculates.")]
      : []),
    ...(sheet.number("brewed_on") === "" ? [fill(cell("brewed_on"), "No brew day yet, so there is no clock.")] : []),
    ...(malt.filled === 0
      ? [fill(cell("malt"), "No malt or sugar yet: gravity, colour and strength wait for it.")]
      : malt.unfinished.map(({ address, missing }) =>
          fill(address, `This malt has no ${missing} yet, and until then gravity and colour stay empty.`),
        )),
    ...hops.unfinished.map(({ address, missing }) =>
      fill(address, `This hop has no ${missing} yet, and until then the bitterness stays empty.`),
    ),
    ...(malt.filled > 0 && sheet.number("attenuation") === ""
      ? [fill(cell("attenuation"), "What apparent attenuation do you expect? Without it there is neither a final gravity nor a strength.")]
      : []),
    ...readings.map(({ address, missing }) => fill(address, `This reading has no ${missing} yet, so it does not count.`)),
    ...(sheet.number("packaged_on") !== "" && sheet.number("volume_reached") === ""
      ? [
          fill(
            cell("volume_reached"),
            "How much reached the fermenter? Sugar and bottles are calculated from the planned volume until then.",
          ),
        ]
      : []),
  ];
}

interface Unfinished {
  readonly address: string;
  readonly missing: string;
}

/** Lines whose first cell in the name, or whose label before it, is filled and another cell is not. */
function begunLines(
  sheet: BatchSheet,
  name: BatchCell,
  columns: readonly string[],
): { readonly filled: number; readonly unfinished: readonly Unfinished[] } {
  const { from, to } = sheet.area(name);
  let filled = 0;
  const unfinished: Unfinished[] = [];
  for (let row = from.row; row <= to.row; row += 1) {
    const cells = columns.map((_, index) => sheet.at(row, from.column + index));
    const label = from.column > 1 ? sheet.at(row, from.column - 1) : "";
    if (label === "" && cells.every((cell) => cell === "")) continue;
    filled += 1;
    const index = cells.findIndex((cell) => cell === "");
    if (index >= 0) unfinished.push({ address: `${columnLetters(from.column + index)}${row}`, missing: columns[index] ?? "" });
  }
  return { filled, unfinished };
}

function readingLines(sheet: BatchSheet): Unfinished[] {
  const { from, to } = sheet.area("readings");
  const timeColumn = sheet.area("reading_times").from.column;
  return Array.from({ length: to.row - from.row + 1 }, (_, index) => from.row + index).flatMap((row): Unfinished[] => {
    const [when, reading, sample] = [sheet.at(row, timeColumn), sheet.at(row, from.column), sheet.at(row, from.column + 2)];
    if (reading === "" && when === "") return [];
    if (reading === "") return [{ address: `${columnLetters(from.column)}${row}`, missing: "figure" }];
    if (when === "") return [{ address: `${columnLetters(timeColumn)}${row}`, missing: "day and time" }];
    return sample === "" ? [{ address: `${columnLetters(from.column + 2)}${row}`, missing: "sample temperature" }] : [];
  });
}
