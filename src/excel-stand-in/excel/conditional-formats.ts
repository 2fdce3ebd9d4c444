import { generateRandomId, type IStyleBase } from "@univerjs/core";
import {
  AddCfCommand,
  CFRuleType,
  CFSubRuleType,
  ConditionalFormattingRuleModel,
  DeleteCfCommand,
  SetCfCommand,
  type IConditionFormattingRule,
  type IFormulaHighlightCell,
} from "@univerjs/sheets-conditional-formatting";
import { assertFormatsOpen, type SheetBlock } from "./cell-writer";
import { ClientCollection } from "./collection";
import { ClientObject } from "./client-object";
import type { Context } from "./context";
import { CustomConditionalFormat } from "./conditional-looks";
import { itemNotFound, RichApiError } from "./errors";
import { overlap, toGridRange, without } from "./grid-ranges";
import type { Range } from "./range";
import type { StandsFor } from "./standing";

export type FormulaRule = IConditionFormattingRule<IFormulaHighlightCell>;
export type FormatTarget = { sheetId: string; id: string };

const rulesOf = (context: Context, sheetId: string): FormulaRule[] =>
  (context.host.engine.injector.get(ConditionalFormattingRuleModel).getSubunitRules(context.host.unitId, sheetId) ?? []) as FormulaRule[];

/** Stands in for Excel.ConditionalFormatCollection of a range. Only formula rules ("Custom") can be made. */
export class ConditionalFormatCollection
  extends ClientCollection<ConditionalFormat, SheetBlock, Context>
  implements StandsFor<Excel.ConditionalFormatCollection, keyof ConditionalFormatCollection>
{
  constructor(private readonly range: Range) {
    super(range.context, { name: "conditionalFormats", missing: "null", find: () => (range.isNullObject ? undefined : range.target) });
  }

  add(type: `${Excel.ConditionalFormatType}` | Excel.ConditionalFormatType): ConditionalFormat {
    if (type !== "Custom") throw new RichApiError("UnsupportedOperation", `The bench has no "${type}" conditional formats.`);
    const id = generateRandomId();
    this.write((block) => {
      assertFormatsOpen(this.context.host, block);
      const rule: FormulaRule = {
        cfId: id,
        ranges: [toGridRange(block)],
        stopIfTrue: false,
        rule: { type: CFRuleType.highlightCell, subType: CFSubRuleType.formula, value: "=FALSE", style: {} },
      };
      this.context.host.command(AddCfCommand.id, { subUnitId: block.sheetId, rule });
    });
    return new ConditionalFormat(this.context, {
      name: "conditionalFormat",
      missing: "throws",
      find: () => ({ sheetId: this.range.target.sheetId, id }),
    });
  }

  /** By place among the rules that touch these cells. */
  getItemAt(index: number): ConditionalFormat {
    const find = () => {
      const { sheetId } = this.range.target;
      const id = this.idsOf(this.range.target)[index];
      return id === undefined ? undefined : { sheetId, id };
    };
    return new ConditionalFormat(this.context, { name: "conditionalFormat", missing: "throws", find });
  }

  clearAll(): void {
    this.write((block) => {
      const hole = toGridRange(block);
      for (const rule of rulesOf(this.context, block.sheetId).filter(({ ranges }) => ranges.some((range) => overlap(range, hole)))) {
        const ranges = rule.ranges.flatMap((range) => without(range, hole));
        const common = { subUnitId: block.sheetId, cfId: rule.cfId };
        if (ranges.length === 0) this.context.host.command(DeleteCfCommand.id, common);
        else this.context.host.command(SetCfCommand.id, { ...common, rule: { ...rule, ranges } });
      }
    });
  }

  protected list(block: SheetBlock): ConditionalFormat[] {
    return this.idsOf(block).map(
      (id) =>
        new ConditionalFormat(this.context, { name: "conditionalFormat", missing: "throws", find: () => ({ sheetId: block.sheetId, id }) }),
    );
  }

  private idsOf(block: SheetBlock): string[] {
    return rulesOf(this.context, block.sheetId)
      .filter((rule) => rule.ranges.some((range) => overlap(range, toGridRange(block))))
      .map((rule) => rule.cfId);
  }
}

/** Stands in for Excel.ConditionalFormat of type "Custom". */
export class ConditionalFormat
  extends ClientObject<FormatTarget, Context>
  implements StandsFor<Excel.ConditionalFormat, keyof ConditionalFormat>
{
  readonly custom = new CustomConditionalFormat(this);

  declare readonly type: Excel.ConditionalFormat["type"];

  /** Changes the grid's rule; while the queue is worked off. */
  update(change: (rule: FormulaRule) => FormulaRule): void {
    const { sheetId, id } = this.target;
    this.context.host.command(SetCfCommand.id, { subUnitId: sheetId, cfId: id, rule: change(this.rule()) });
  }

  restyle(style: IStyleBase): void {
    this.update((rule) => ({ ...rule, rule: { ...rule.rule, style: { ...rule.rule.style, ...style } } }));
  }

  /** The grid's rule; while the queue is worked off. */
  rule(): FormulaRule {
    const { sheetId, id } = this.target;
    const rule = rulesOf(this.context, sheetId).find((one) => one.cfId === id);
    if (!rule) throw itemNotFound("conditionalFormat");
    return rule;
  }

  protected override children() {
    return { custom: () => this.custom };
  }

  protected override readers() {
    return { type: () => "Custom" };
  }
}
