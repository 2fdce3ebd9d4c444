import { quoted } from "../../../functions/formula-text";
import { CellError } from "../../../functions/cell-error";
import { argumentName, type AnyDescriptor, type Parameter } from "../../../functions/describe";
import { isErrorText, type Cells } from "../../grid/evaluate/cells";
import { evaluate, OnlyTheSheetKnows } from "../../grid/evaluate/evaluate";
import { parsed } from "../../grid/evaluate/parse";
import { asKept, callsAsWritten, type DecimalSign } from "../../grid/formulas/writing";
import { askForNames, readWorld } from "../../grid/evaluate/read-world";
import { address as addressAt, position } from "../../grid/plan/addresses";
import type { CellValue } from "../../grid/read/named-cells";
import { withSecondLook } from "../../grid/read/second-look";
import { writtenAgain } from "../../grid/words/cell-text";
import { changeRanges } from "../../grid/write/change-ranges";
import { askInEmptyCell, needFunctions } from "../../grid/write/known-functions";
import { isSame } from "../../grid/write/same-content";
import type { showCell } from "./show-value";
import { sentenceOf } from "../../grid/words/sentence";
import { showCells } from "./show-value";

export interface Target {
  readonly sheet: string;
  readonly address: string;
}

/**
 * What an argument's field holds, as it belongs into a formula: words in quotes, numbers with a point, references as they are. A number
 * with a comma is one in any country.
 */
export function argumentText(parameter: Parameter, typed: string, decimal: DecimalSign): string {
  const words = typed.trim();
  if (words === "") return "";
  const text = asKept(words, /^[-+]?\d+,\d+\s*%?$/.test(words) ? "," : decimal);
  if (parameter.kind === "choice" && parameter.choices.some((choice) => choice.toLowerCase() === text.toLowerCase()))
    return `"${text.toLowerCase()}"`;
  // Free words that are plainly no reference, name or formula.
  if (parameter.kind === "text" && !words.startsWith('"') && parsed(text)?.type !== "ReferenceIdentifier") return quoted(words);
  return text;
}

/** The formula that the fields amount to; arguments left out at the end are not written. */
export function formulaOf(descriptor: AnyDescriptor, typed: readonly string[], decimal: DecimalSign): string {
  const parameters = Object.values(descriptor.parameters as Record<string, Parameter>);
  const texts = parameters.map((parameter, index) => argumentText(parameter, typed[index] ?? "", decimal));
  const last = texts.findLastIndex((text) => text !== "");
  return `=GYLE.${descriptor.id}(${texts.slice(0, last + 1).join(", ")})`;
}

export type Preview =
  | { readonly kind: "answer"; readonly shown: string; readonly rows: number; readonly columns: number }
  | { readonly kind: "empty"; readonly words: string }
  | { readonly kind: "wrong"; readonly words: string };

/** What a formula would answer on a sheet, before it stands anywhere. Reads in two round trips, writes nothing. */
export async function previewFormula(
  context: Excel.RequestContext,
  descriptor: AnyDescriptor,
  typed: readonly string[],
  decimal: DecimalSign,
  { sheet, address }: Target,
): Promise<Preview> {
  const missing = Object.entries(descriptor.parameters as Record<string, Parameter>).filter(
    ([, parameter], index) => parameter.optional !== true && (typed[index] ?? "").trim() === "",
  );
  if (missing.length > 0) return { kind: "empty", words: `Still needed: ${missing.map(([key]) => argumentName(key)).join(", ")}.` };
  const formula = formulaOf(descriptor, typed, decimal);
  const tree = parsed(formula);
  if (!tree) return { kind: "wrong", words: "That is no formula yet: is a quote or a bracket missing in a field?" };
  const asked = askForNames(context, context.workbook.worksheets.getItem(sheet));
  await context.sync();
  const world = await readWorld(context, asked, sheet, position(address), [formula]);
  try {
    const shown = shownPreview(descriptor, evaluate(tree, world));
    return shown.kind === "wrong" ? { ...shown, words: callsAsWritten(shown.words, decimal) } : shown;
  } catch (problem) {
    if (!(problem instanceof OnlyTheSheetKnows)) throw problem;
    return { kind: "empty", words: `Only the sheet can work out ${problem.message}; the answer shows once it is written.` };
  }
}

function shownPreview({ parameters, result }: AnyDescriptor, answers: Cells): Preview {
  const first = answers[0]?.[0] ?? "";
  const only = answers.length === 1 && answers[0]?.length === 1;
  if (only && first instanceof CellError)
    return { kind: "wrong", words: sentenceOf(first.message, Object.keys(parameters).map(argumentName)) };
  if (only && first === "") return { kind: "empty", words: "The answer is empty, since a cell it looks at is not filled in yet." };
  const quantityName = (result as { quantity?: Parameters<typeof showCell>[1] }).quantity;
  return { kind: "answer", shown: showCells(answers, quantityName), rows: answers.length, columns: answers[0]?.length ?? 1 };
}

export type PutOutcome =
  | { readonly kind: "written"; readonly shown: string }
  /** Something stands there; nothing was written. What stands in the cell itself may be written over by whoever has seen it. */
  | { readonly kind: "occupied"; readonly words: string; readonly holds?: CellValue };

/**
 * Writes a formula into one cell: only into an empty one, unless the brewer has seen what is there and said to replace it.
 * Cells that the answer would spill into must be empty in any case. One write; when it fails nothing has changed.
 *
 * @param agreed what the brewer saw in the cell and gives up: the `holds` of the outcome before
 * @throws FunctionsUnknown; otherwise as `writeSurely`
 */
export function putIntoCell(
  context: Excel.RequestContext,
  at: Target,
  formula: string,
  spill: { readonly rows: number; readonly columns: number },
  agreed?: CellValue,
): Promise<PutOutcome> {
  return withSecondLook(() => lookAndPut(context, at, formula, spill, agreed));
}

async function lookAndPut(
  context: Excel.RequestContext,
  { sheet, address }: Target,
  formula: string,
  spill: { readonly rows: number; readonly columns: number },
  agreed?: CellValue,
): Promise<PutOutcome> {
  const { row, column } = position(address);
  const target = context.workbook.worksheets.getItem(sheet);
  const around = target.getRange(`${address}:${addressAt(row + spill.rows - 1, column + spill.columns - 1)}`);
  around.load("formulas,formulasLocal,values");
  const used = target.getUsedRange().load("rowIndex,rowCount");
  await context.sync();
  const filled = around.formulas.flatMap((line: unknown[], r) =>
    line.flatMap((content, c) => (content === "" ? [] : [{ address: addressAt(row + r, column + c), content: content as CellValue }])),
  );
  const inTheWay = filled.find((cell) => cell.address !== address);
  if (inTheWay)
    return {
      kind: "occupied",
      words: `The answer needs ${String(spill.rows)} × ${String(spill.columns)} cells, and ${inTheWay.address} is not empty. Nothing was written; choose a cell with room.`,
    };
  const own = filled.find((cell) => cell.address === address);
  if (own && (agreed === undefined || !isSame(own.content, agreed))) {
    const seen = String(around.formulasLocal[0]?.[0]);
    return {
      kind: "occupied",
      holds: own.content,
      words: `${address} holds ${seen.length > 40 ? `${seen.slice(0, 40)}…` : seen}. Nothing was written yet.`,
    };
  }
  // What stands in the cell itself may be one of ours, which would be at #NAME? as well once it was put back.
  if (needFunctions([formula])) await askInEmptyCell(context, sheet, own ? `A${used.rowIndex + used.rowCount + 1}` : address);
  const cell = target.getRange(address);
  const before = own?.content ?? "";
  const again = [[writtenAgain(before, around.values[0]?.[0])]];
  await changeRanges(context, [{ sheetName: sheet, range: address, before: [[before]], again, content: [[formula]] }], {
    place: `${address} on “${sheet}”`,
  });
  return { kind: "written", shown: await shownBy(context, cell) };
}

/** What the cell shows now; a failure to read must not look like a failure to write. */
async function shownBy(context: Excel.RequestContext, cell: Excel.Range): Promise<string> {
  try {
    cell.load("text,values");
    await context.sync();
  } catch {
    return "";
  }
  const value: unknown = cell.values[0]?.[0];
  return isErrorText(value) ? value : (cell.text[0]?.[0] ?? "");
}

/** The cell that is selected, and what the arguments of a function can be filled from: the name `units` of its sheet. */
export async function readTarget(context: Excel.RequestContext): Promise<Target & { readonly hasUnits: boolean }> {
  const cell = context.workbook.getActiveCell();
  const sheet = context.workbook.worksheets.getActiveWorksheet();
  cell.load("address");
  sheet.load("name");
  const units = sheet.names.getItemOrNullObject("units");
  units.load("name");
  await context.sync();
  return { sheet: sheet.name, address: cell.address.slice(cell.address.lastIndexOf("!") + 1), hasUnits: !units.isNullObject };
}

/** The selection as it belongs into a formula on a sheet: "B4:B9", or "'Batch 1'!B4" from another one. */
export async function selectionFor(context: Excel.RequestContext, { sheet }: Target): Promise<string> {
  const range = context.workbook.getSelectedRange();
  const own = context.workbook.worksheets.getActiveWorksheet();
  range.load("address");
  own.load("name");
  await context.sync();
  return own.name === sheet ? range.address.slice(range.address.lastIndexOf("!") + 1) : range.address;
}
