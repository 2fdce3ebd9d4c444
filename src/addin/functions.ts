import { call, type Answer } from "../functions/call";
import { CellError, type CellErrorCode } from "../functions/cell-error";
import type { AnyDescriptor } from "../functions/describe";
import { registry } from "../functions/registry";

/**
 * The classic script that Excel (or the bench) loads first: registers every worksheet function before anything can
 * ask for it. Nothing here but the way from Excel's objects to ours and back.
 */
type ExcelCell = number | string | boolean | CustomFunctions.Error;

/** A row of a matrix, or an error: what is not a cell as it stands. A row of plain cells stands as it is, too. */
const isObject = (typed: unknown): boolean => (Array.isArray(typed) ? typed.some(isObject) : typeof typed === "object" && typed !== null);

/** An error in an input arrives as Excel's own error object when the metadata allows it. */
function fromExcel(typed: unknown): unknown {
  // A whole column of plain cells is passed on as it came, and not copied cell by cell.
  if (Array.isArray(typed)) return typed.some(isObject) ? typed.map(fromExcel) : typed;
  if (typeof typed === "object" && typed !== null && "code" in typed) {
    const { code, message } = typed as { code: unknown; message?: unknown };
    return new CellError(
      String(code) as CellErrorCode,
      typeof message === "string" && message !== "" ? message : `an input is ${String(code)}`,
    );
  }
  return typed;
}

/** Only #VALUE! and #N/A can carry a message in Excel; the code itself is one of Excel's own. */
function toExcel(cell: Answer[number][number]): ExcelCell {
  return cell instanceof CellError ? new CustomFunctions.Error(cell.code as CustomFunctions.ErrorCode, cell.message) : cell;
}

/**
 * Excel appends an invocation object to the arguments. Only as many as there are parameters are read, and where a host
 * sends fewer, that object is not taken for one of them: our arguments are matrices, values or errors.
 */
const isInvocation = (typed: unknown): boolean =>
  typeof typed === "object" && typed !== null && !Array.isArray(typed) && !("code" in typed);

function worksheetFunction(descriptor: AnyDescriptor): (...typed: unknown[]) => ExcelCell[][] {
  const count = Object.keys(descriptor.parameters as object).length;
  return (...typed) =>
    call(
      descriptor,
      typed
        .slice(0, count)
        .filter((argument) => !isInvocation(argument))
        .map(fromExcel),
    ).map((row) => (row.some(isObject) ? row.map(toExcel) : (row as ExcelCell[])));
}

CustomFunctions.associate(Object.fromEntries(registry.map((descriptor) => [descriptor.id, worksheetFunction(descriptor)])));
