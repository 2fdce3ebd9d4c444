import type { DataValidation } from "hucre/xlsx";
import { blockAddresses, parseBlocks, type Block } from "./addresses";
import { serialOfDateText } from "./dates";
import { fromFileFormula, toFileFormula } from "./formula-translation";

/** One validation rule in the grid's resource. */
export interface GridValidation {
  uid: string;
  ranges: Block[];
  type: string;
  operator?: string;
  formula1?: string;
  formula2?: string;
  allowBlank?: boolean;
  showErrorMessage?: boolean;
  errorTitle?: string;
  error?: string;
  /** 0 information, 1 stop, 2 warning. */
  errorStyle?: number;
  showInputMessage?: boolean;
  promptTitle?: string;
  prompt?: string;
}

const ERROR_STYLES = ["information", "stop", "warning"] as const;
const FILE_TYPES = ["list", "whole", "decimal", "date", "time", "textLength", "custom"];
/** The longest list that Excel accepts when the choices are written into the rule itself. */
const LONGEST_LIST = 255;

export function validationsFromFile(rules: readonly DataValidation[] | undefined, functionNames: readonly string[]): GridValidation[] {
  return (rules ?? [])
    .filter((rule) => FILE_TYPES.includes(rule.type))
    .map((rule, index) => ({
      uid: `dv${index + 1}`,
      ranges: parseBlocks(rule.range),
      type: rule.type,
      ...(rule.operator ? { operator: rule.operator } : hasOperator(rule.type) ? { operator: "between" } : {}),
      ...present("formula1", rule.values ? JSON.stringify(rule.values) : conditionFromFile(rule.formula1, rule.type, functionNames)),
      ...present("formula2", conditionFromFile(rule.formula2, rule.type, functionNames)),
      allowBlank: rule.allowBlank ?? false,
      showErrorMessage: rule.showErrorMessage ?? false,
      errorStyle: ERROR_STYLES.indexOf(rule.errorStyle ?? "stop"),
      ...present("errorTitle", rule.errorTitle),
      ...present("error", rule.errorMessage),
      showInputMessage: rule.showInputMessage ?? false,
      ...present("promptTitle", rule.inputTitle),
      ...present("prompt", rule.inputMessage),
    }));
}

const hasOperator = (type: string): boolean => type !== "list" && type !== "custom";
const present = <Key extends string>(key: Key, value: string | undefined): Partial<Record<Key, string>> =>
  value === undefined ? {} : ({ [key]: value } as Record<Key, string>);

/** The grid marks a formula by its equals sign; a number or a choice list has none. */
function conditionFromFile(text: string | undefined, type: string, functionNames: readonly string[]): string | undefined {
  if (text === undefined) return undefined;
  if (type === "list" && /^"[^]*"$/.test(text))
    return JSON.stringify(
      text
        .slice(1, -1)
        .replaceAll('""', '"')
        .split(",")
        .map((item) => item.trim()),
    );
  return Number.isFinite(Number(text)) && type !== "list" ? text : fromFileFormula(text, functionNames);
}

export function validationsToFile(rules: readonly GridValidation[]): DataValidation[] {
  return rules.map(ruleToFile).filter((rule) => rule !== undefined);
}

/** Kinds that only the grid has (tick boxes, several choices) have no counterpart in a file, except the choices themselves. */
function ruleToFile(rule: GridValidation): DataValidation | undefined {
  const type = rule.type === "listMultiple" ? "list" : rule.type;
  const range = blockAddresses(rule.ranges);
  if (!FILE_TYPES.includes(type) || range === "") return undefined;
  return {
    type: type as DataValidation["type"],
    range,
    ...(rule.operator && hasOperator(type) ? { operator: rule.operator as DataValidation["operator"] } : {}),
    ...present("formula1", conditionToFile(rule.formula1, type)),
    ...(hasOperator(type) ? present("formula2", conditionToFile(rule.formula2, type)) : {}),
    allowBlank: rule.allowBlank ?? true,
    showErrorMessage: rule.showErrorMessage ?? false,
    errorStyle: ERROR_STYLES[rule.errorStyle ?? 1] ?? "stop",
    ...present("errorTitle", rule.errorTitle),
    ...present("errorMessage", rule.error),
    showInputMessage: rule.showInputMessage ?? Boolean(rule.prompt),
    ...present("inputTitle", rule.promptTitle),
    ...present("inputMessage", rule.prompt),
  };
}

function conditionToFile(text: string | undefined, type: string): string | undefined {
  if (text === undefined || text === "") return undefined;
  if (text.startsWith("=")) return toFileFormula(text);
  if (type === "list") return choicesToFile(choices(text));
  const serial = type === "date" && !Number.isFinite(Number(text)) ? serialOfDateText(text) : undefined;
  return serial === undefined ? text : String(serial);
}

function choices(text: string): string[] {
  try {
    const list: unknown = JSON.parse(text);
    if (Array.isArray(list)) return list.map(String);
  } catch {
    /* not JSON: the other way the grid writes a list is with commas */
  }
  return text.split(",").filter((choice) => choice !== "");
}

/** @throws {RangeError} if the choices cannot stand in a file's rule; the cure is a list of cells */
function choicesToFile(list: string[]): string {
  const text = list.join(",");
  const comma = list.find((choice) => choice.includes(","));
  if (comma !== undefined) throw new RangeError(`a choice list in a file cannot hold a comma ("${comma}"): put the choices into cells`);
  if (text.length > LONGEST_LIST)
    throw new RangeError(`a choice list in a file holds at most ${LONGEST_LIST} characters: put the choices into cells`);
  return `"${text.replaceAll('"', '""')}"`;
}
