import {
  DataValidationErrorStyle,
  DataValidationOperator,
  DataValidationType,
  generateRandomId,
  type ISheetDataValidationRule,
} from "@univerjs/core";
import { AddSheetDataValidationCommand, ClearRangeDataValidationCommand, SheetDataValidationModel } from "@univerjs/sheets-data-validation";
import { assertFormatsOpen, type SheetBlock } from "./cell-writer";
import { invalidArgument } from "./errors";
import { toGridRange } from "./grid-ranges";
import { Range } from "./range";
import { RangePart } from "./range-part";
import type { StandsFor } from "./standing";

const kinds = {
  wholeNumber: DataValidationType.WHOLE,
  decimal: DataValidationType.DECIMAL,
  date: DataValidationType.DATE,
  time: DataValidationType.TIME,
  textLength: DataValidationType.TEXT_LENGTH,
} as const;
const operators: Record<string, DataValidationOperator> = {
  Between: DataValidationOperator.BETWEEN,
  NotBetween: DataValidationOperator.NOT_BETWEEN,
  EqualTo: DataValidationOperator.EQUAL,
  NotEqualTo: DataValidationOperator.NOT_EQUAL,
  GreaterThan: DataValidationOperator.GREATER_THAN,
  LessThan: DataValidationOperator.LESS_THAN,
  GreaterThanOrEqualTo: DataValidationOperator.GREATER_THAN_OR_EQUAL,
  LessThanOrEqualTo: DataValidationOperator.LESS_THAN_OR_EQUAL,
};
const errorStyles: Record<string, DataValidationErrorStyle> = {
  Stop: DataValidationErrorStyle.STOP,
  Warning: DataValidationErrorStyle.WARNING,
  Information: DataValidationErrorStyle.INFO,
};

/** Stands in for Excel.DataValidation. The rule, prompt and alert may be set one after the other, as in Excel. */
export class DataValidation extends RangePart implements StandsFor<Excel.DataValidation, keyof DataValidation> {
  declare rule: Excel.DataValidationRule;
  declare prompt: Excel.DataValidationPrompt;
  declare errorAlert: Excel.DataValidationErrorAlert;
  declare ignoreBlanks: boolean;
  declare readonly type: Excel.DataValidation["type"];

  clear(): void {
    this.write((block) =>
      this.context.host.command(ClearRangeDataValidationCommand.id, { subUnitId: block.sheetId, ranges: [toGridRange(block)] }),
    );
  }

  protected override changes() {
    return {
      rule: (rule: Excel.DataValidationRule) => this.change("rule", rule, () => gridRule(rule)),
      prompt: (prompt: Excel.DataValidationPrompt) =>
        this.change("prompt", prompt, () => ({ showInputMessage: prompt.showPrompt, promptTitle: prompt.title, prompt: prompt.message })),
      errorAlert: (alert: Excel.DataValidationErrorAlert) =>
        this.change("errorAlert", alert, () => ({
          showErrorMessage: alert.showAlert,
          errorTitle: alert.title,
          error: alert.message,
          errorStyle: errorStyles[alert.style] ?? DataValidationErrorStyle.STOP,
        })),
      ignoreBlanks: (ignore: boolean) => this.change("ignoreBlanks", ignore, () => ({ allowBlank: ignore })),
    };
  }

  protected override readers() {
    return {
      type: (block: SheetBlock) => typeName(this.present(block)?.type),
      ignoreBlanks: (block: SheetBlock) => this.present(block)?.allowBlank ?? true,
      rule: (block: SheetBlock) => excelRule(this.present(block)),
      prompt: (block: SheetBlock) => {
        const rule = this.present(block);
        return { showPrompt: rule?.showInputMessage ?? false, title: rule?.promptTitle ?? "", message: rule?.prompt ?? "" };
      },
    };
  }

  private change(property: string, value: unknown, part: () => Partial<ISheetDataValidationRule>): void {
    this.set(property, value, (block) => {
      assertFormatsOpen(this.context.host, block);
      const rule: ISheetDataValidationRule = {
        type: DataValidationType.ANY,
        allowBlank: true,
        showErrorMessage: true,
        errorStyle: DataValidationErrorStyle.STOP,
        ...this.present(block),
        ...part(),
        uid: generateRandomId(),
        ranges: [toGridRange(block)],
      };
      this.context.host.command(AddSheetDataValidationCommand.id, { subUnitId: block.sheetId, rule });
    });
  }

  private present(block: SheetBlock): ISheetDataValidationRule | undefined {
    const model = this.context.host.engine.injector.get(SheetDataValidationModel);
    return model.getRuleByLocation(this.context.host.unitId, block.sheetId, block.row, block.column) ?? undefined;
  }
}

function gridRule(rule: Excel.DataValidationRule): Partial<ISheetDataValidationRule> {
  if (rule.list)
    return {
      type: DataValidationType.LIST,
      formula1: listSource(rule.list.source as string | Range),
      showDropDown: rule.list.inCellDropDown,
    };
  if (rule.custom) return { type: DataValidationType.CUSTOM, formula1: String(rule.custom.formula) };
  for (const [kind, type] of Object.entries(kinds)) {
    const basic = rule[kind as keyof typeof kinds] as Excel.BasicDataValidation | undefined;
    if (!basic) continue;
    const operator = operators[basic.operator];
    if (!operator) throw invalidArgument(`There is no operator "${basic.operator}".`);
    return {
      type,
      operator,
      formula1: formulaText(basic.formula1),
      formula2: basic.formula2 === undefined ? undefined : formulaText(basic.formula2),
    };
  }
  throw invalidArgument("The validation rule is empty.");
}

/** Excel takes "a,b,c", "=Names" or a range. */
const listSource = (source: string | Range): string => (source instanceof Range ? `=${source.absoluteAddress()}` : source);

const formulaText = (formula: unknown): string => (formula instanceof Range ? `=${formula.absoluteAddress()}` : String(formula));

function excelRule(rule: ISheetDataValidationRule | undefined): Excel.DataValidationRule {
  if (rule?.type === DataValidationType.LIST) return { list: { inCellDropDown: rule.showDropDown !== false, source: rule.formula1 ?? "" } };
  if (rule?.type === DataValidationType.CUSTOM) return { custom: { formula: rule.formula1 ?? "" } };
  const kind = Object.entries(kinds).find(([, type]) => type === rule?.type)?.[0];
  if (!rule || !kind) return {};
  const operator = Object.entries(operators).find(([, one]) => one === rule.operator)?.[0] as Excel.DataValidationOperator;
  return { [kind]: { formula1: rule.formula1, ...(rule.formula2 === undefined ? {} : { formula2: rule.formula2 }), operator } };
}

function typeName(type: string | undefined): string {
  const names: Record<string, string> = {
    list: "List",
    custom: "Custom",
    whole: "WholeNumber",
    decimal: "Decimal",
    date: "Date",
    time: "Time",
    textLength: "TextLength",
  };
  return names[type ?? ""] ?? "None";
}
