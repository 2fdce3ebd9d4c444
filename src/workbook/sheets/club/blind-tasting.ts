import { newBatchId } from "../../batch/batch-id";
import { freeName } from "../../batch/insert-batch";
import { address } from "../../grid/plan/addresses";
import type { CellContent } from "../../grid/plan/sheet-plan";
import type { NamedCells } from "../../grid/read/named-cells";
import { readAllSheets } from "../../grid/read/read-sheets";
import { withSecondLook } from "../../grid/read/second-look";
import { cellText, writtenAgain } from "../../grid/words/cell-text";
import { shortened } from "../../grid/words/shortened";
import { Unsure } from "../../grid/words/told-in-full";
import { changeRanges, rangeChange } from "../../grid/write/change-ranges";
import { InsertionRefused, insertSheet } from "../../grid/write/insert-sheet";
import { newWorkbookOf } from "../../exchange/unplug/new-workbook/new-workbook";
import { deleteSheets } from "../../exchange/unplug/unplug-sheet";
import { blindCodes, byChance, servingOrders, type Draw } from "./blind-codes";
import { factNames } from "./club-facts";
import { unitsOfClub } from "./club-sheet";
import { factsName } from "./facts-plan";
import { scoreLimits, tastedLines } from "../../batch/fields/tasting";
import { planScoreSheet, mostMarks, scoresMark, scoresVersion, type ScoreSheet } from "./score-sheet-plan";
import type { Scores } from "./score-line";
import { mostBeers, mostTasters, planTasting, tastingMark, tastingVersion } from "./tasting-plan";

/** A beer on a club sheet that may be tasted. */
export interface ClubBeer {
  readonly beer: string;
  readonly member: string;
}

export function beersOfClub(club: NamedCells): ClubBeer[] {
  const [beer, member] = [factNames.indexOf("beer"), factNames.indexOf("member")];
  return club.block(factsName).flatMap((row) => {
    const one = { beer: String(row[beer] ?? "").trim(), member: String(row[member] ?? "").trim() };
    return one.beer === "" && one.member === "" ? [] : [one];
  });
}

/** Names as they were typed, one a line: without blanks, and each once. */
export const tastersOf = (typed: string): string[] =>
  [...new Set(typed.split(/\r?\n/).map((name) => name.trim()))].filter((name) => name !== "");

/**
 * A new sheet with blind codes for these beers, drawn, and room for the scores of these tasters: all of it or nothing.
 *
 * @throws InsertionRefused when the name is taken, or there are too few or too many of either
 */
export async function insertTasting(
  context: Excel.RequestContext,
  options: {
    readonly sheetName: string;
    readonly club: NamedCells;
    readonly beers: readonly ClubBeer[];
    readonly tasters: readonly string[];
  },
  draw: Draw = byChance,
): Promise<void> {
  const { sheetName, club, beers, tasters } = options;
  if (beers.length < 2 || beers.length > mostBeers)
    throw new InsertionRefused(
      `A tasting has 2 to ${mostBeers} beers, not ${beers.length}: after more nobody judges the last as the first.`,
    );
  if (tasters.length > mostTasters)
    throw new InsertionRefused(`A tasting sheet has room for ${mostTasters} tasters, not ${tasters.length}.`);
  const codes = blindCodes(beers.length, draw);
  // In the order of the codes, so that the order on the club sheet tells nothing either.
  const blind = beers.map((one, index) => ({ ...one, code: codes[index] ?? 0 })).sort((one, other) => one.code - other.code);
  const paper = unitsOfClub(club) === "us" ? "letter" : "a4";
  await insertSheet(context, planTasting({ sheetName, id: newBatchId(), paper, beers: blind, tasters }), "A1");
}

const isTasting = (sheet: NamedCells): boolean =>
  sheet.has(tastingMark) && sheet.has("tasting_scores") && Number(sheet.value(tastingMark)) <= tastingVersion;

/** Tasting sheets of the workbook, in the order of the tabs. */
export const tastingSheets = async (context: Excel.RequestContext): Promise<NamedCells[]> =>
  (await readAllSheets(context)).filter(isTasting);

async function tastingSheet(context: Excel.RequestContext, sheetName: string): Promise<NamedCells> {
  const sheet = (await tastingSheets(context)).find((tasting) => tasting.sheetName === sheetName);
  if (!sheet) throw new InsertionRefused(`There is no tasting sheet “${sheetName}” any more. Nothing was written.`);
  return sheet;
}

const codesOf = (tasting: NamedCells): number[] => tasting.block("tasting_codes").flat().map(Number);
export const namesOfTasters = (tasting: NamedCells): string[] =>
  tasting
    .block("tasting_tasters")
    .flat()
    .map((name) => String(name).trim());

/** A sheet's name has 31 signs at most, and some are not allowed in it. */
const nameOfSheet = (taster: string): string => shortened(`Scores ${taster.replace(/[[\]:*?/\\']/g, " ").trim()}`).trim();

/** Score sheets for the tasters of a tasting, each with the codes in an order of its own. */
function scoreSheets(tasting: NamedCells, taken: readonly string[], draw: Draw): ScoreSheet[] {
  const codes = codesOf(tasting);
  const tasters = namesOfTasters(tasting).filter((name) => name !== "");
  if (tasters.length === 0)
    throw new InsertionRefused(`“${tasting.sheetName}” names no taster yet: type their names into its first column.`);
  const orders = servingOrders(codes.length, tasters.length, draw);
  const names = [...taken];
  return tasters.map((taster, index) => {
    const sheetName = freeName(names, nameOfSheet(taster));
    names.push(sheetName);
    return {
      sheetName,
      tastingName: tasting.sheetName,
      tastingId: tasting.text("tasting_id"),
      paper: tasting.text("tasting_paper") === "letter" ? "letter" : "a4",
      taster,
      codes: (orders[index] ?? []).map((beer) => codes[beer] ?? 0),
    };
  });
}

/**
 * A score sheet for each taster, on sheets of this workbook or in a new one, from which nobody can tell which beer is which. All of them
 * or none.
 *
 * @param open hands a new workbook to Excel as base64: `Excel.createWorkbook`; left out, the sheets stay here
 * @returns the names of the sheets
 */
export async function insertScoreSheets(
  context: Excel.RequestContext,
  sheetName: string,
  open?: (base64: string) => Promise<unknown>,
  draw: Draw = byChance,
): Promise<string[]> {
  const all = await readAllSheets(context);
  const sheets = scoreSheets(
    await tastingSheet(context, sheetName),
    all.map((sheet) => sheet.sheetName),
    draw,
  );
  const names: string[] = [];
  try {
    for (const sheet of sheets) {
      await insertSheet(context, planScoreSheet(sheet), "behind", open ? "for a moment" : "for good");
      names.push(sheet.sheetName);
    }
  } catch (problem) {
    await deleteSheets(context, names, problem instanceof Unsure ? sheets.slice(names.length, names.length + 1).map(nameOf) : []);
    throw problem;
  }
  if (open) await newWorkbookOf(context, names, open);
  return names;
}

const nameOf = ({ sheetName }: ScoreSheet): string => sheetName;

/** What is on the score sheets of this workbook, whoever's tasting they belong to. */
export async function scoresInWorkbook(context: Excel.RequestContext): Promise<Scores[]> {
  const sheets = (await readAllSheets(context)).filter(
    (sheet) => sheet.has(scoresMark) && Number(sheet.value(scoresMark)) <= scoresVersion,
  );
  return sheets.map((sheet) => {
    const sums = sheet.block("score_sums").flat();
    return {
      from: `“${sheet.sheetName}”`,
      tastingId: sheet.text("score_tasting"),
      taster: sheet.text("score_taster"),
      sums: sheet
        .block("score_codes")
        .flat()
        .map((code, index) => {
          const sum = sums[index];
          return { code: Number(code), sum: typeof sum === "number" ? sum : ("" as const) };
        }),
    };
  });
}

export interface TakenScores {
  /** How many beers of how many were taken from whom. */
  readonly taken: readonly { readonly taster: string; readonly beers: number; readonly of: number }[];
  /** What was not, and why. */
  readonly left: readonly string[];
}

/**
 * Writes scores into a tasting sheet, in the row of their taster or the next free one. A score that stands there already is never
 * written over: what differs from it is left, and said.
 *
 * @throws InsertionRefused where the tasting sheet is gone
 */
export function takeScores(context: Excel.RequestContext, sheetName: string, received: readonly Scores[]): Promise<TakenScores> {
  return withSecondLook(() => lookAndTake(context, sheetName, received));
}

async function lookAndTake(context: Excel.RequestContext, sheetName: string, received: readonly Scores[]): Promise<TakenScores> {
  const sheet = await tastingSheet(context, sheetName);
  const codes = codesOf(sheet);
  const rows = ["tasting_tasters", "tasting_scores"].map((name) => {
    const values = sheet.block(name);
    return sheet
      .formulaBlock(name)
      .map((row, index) => row.map((formula, column): CellContent => asContent(writtenAgain(formula, values[index]?.[column]))));
  });
  const [tasters = [], scores = []] = rows;
  const [names, standing] = [namesOfTasters(sheet), sheet.block("tasting_scores")];
  const taken: { taster: string; beers: number; of: number }[] = [];
  const left: string[] = [];
  for (const { from, tastingId, taster, sums } of received) {
    if (tastingId !== sheet.text("tasting_id")) {
      left.push(`${from} belongs to another tasting.`);
      continue;
    }
    const known = names.findIndex((name) => name.toLowerCase() === taster.toLowerCase());
    const row = known >= 0 ? known : names.findIndex((name, at) => name === "" && standing[at]?.every((cell) => cell === "") === true);
    if (taster === "" || row < 0) {
      left.push(taster === "" ? `${from} does not say whose it is.` : `${from}: there is no free row for ${taster}.`);
      continue;
    }
    let beers = 0;
    for (const { code, sum } of sums) {
      const column = codes.indexOf(code);
      const there = standing[row]?.[column];
      if (column < 0) left.push(`${from}: no beer has the code ${code}.`);
      else if (sum === "") left.push(`${from}: ${code} has not all its marks yet.`);
      else if (!Number.isInteger(sum) || sum < tastedLines.length || sum > mostMarks)
        left.push(
          `${from}: ${sum} for ${code} cannot be; ${tastedLines.length} marks of ${scoreLimits.join(" to ")} come to ${tastedLines.length} to ${mostMarks}.`,
        );
      else if (there !== "" && there !== sum)
        left.push(`${from}: ${code} has ${sum}, but ${String(there)} stands on “${sheetName}” already. Clear that cell to take the other.`);
      else {
        beers += 1;
        scores[row]![column] = sum;
        standing[row]![column] = sum;
      }
    }
    if (beers === 0) continue;
    if (known < 0) {
      tasters[row]![0] = cellText(taster);
      names[row] = taster;
    }
    taken.push({ taster, beers, of: codes.length });
  }
  if (taken.length > 0) {
    const { from } = sheet.area("tasting_tasters");
    const { to } = sheet.area("tasting_scores");
    const range = `${address(from.row, from.column)}:${address(to.row, to.column)}`;
    const content = tasters.map((row, index) => [...row, ...(scores[index] ?? [])]);
    await changeRanges(context, [rangeChange(sheet, range, content)], { place: `“${sheetName}”` });
  }
  return { taken, left };
}

const asContent = (cell: string | number | boolean): CellContent => (typeof cell === "boolean" ? String(cell) : cell);
