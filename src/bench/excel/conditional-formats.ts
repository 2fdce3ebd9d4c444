import { BooleanNumber, generateRandomId, type IStyleBase } from "@univerjs/core";
import {
  AddCfCommand, CFRuleType, CFSubRuleType, ConditionalFormattingRuleModel, DeleteCfCommand, SetCfCommand,
  type IConditionFormattingRule, type IFormulaHighlightCell,
} from "@univerjs/sheets-conditional-formatting";
import { assertFormatsOpen, type SheetBlock } from "./cell-writer";
import { ClientCollection } from "./collection";
import { ClientObject } from "./client-object";
import type { Context } from "./context";
import { RichApiError } from "./errors";
import { overlap, toGridRange, without } from "./grid-ranges";
import type { Range } from "./range";
import type { StandsFor } from "./standing";

type FormulaRule = IConditionFormattingRule<IFormulaHighlightCell>;
type FormatTarget = { sheetId: string; id: string };

const rulesOf = (context: Context, sheetId: string): FormulaRule[] =>
  (context.host.engine.injector.get(ConditionalFormattingRuleModel).getSubunitRules(context.host.unitId, sheetId) ?? []) as FormulaRule[];

/** Stands in for Excel.ConditionalFormatCollection of a range. Only formula rules ("Custom") can be made. */
export class ConditionalFormatCollection extends ClientCollection<ConditionalFormat, SheetBlock, Context>
  implements StandsFor<Excel.ConditionalFormatCollection, "add" | "clearAll" | "items" | "getCount"> {
  constructor(private readonly range: Range) {
    super(range.context, { name: "conditionalFormats", missing: "null", find: () => (range.isNullObject ? undefined : range.target) });
  }

  add(type: `${Excel.ConditionalFormatType}` | Excel.ConditionalFormatType): ConditionalFormat {
    if (type !== "Custom") throw new RichApiError("UnsupportedOperation", `The bench has no "${type}" conditional formats.`);
    const id = generateRandomId();
    this.write((block) => {
      assertFormatsOpen(this.context.host, block);
      const rule: FormulaRule = {
        cfId: id, ranges: [toGridRange(block)], stopIfTrue: false,
        rule: { type: CFRuleType.highlightCell, subType: CFSubRuleType.formula, value: "=FALSE", style: {} },
      };
      this.context.host.command(AddCfCommand.id, { subUnitId: block.sheetId, rule });
    });
    return new ConditionalFormat(this.context, { name: "conditionalFormat", missing: "throws", find: () => ({ sheetId: this.range.target.sheetId, id }) });
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
    return rulesOf(this.context, block.sheetId)
      .filter((rule) => rule.ranges.some((range) => overlap(range, toGridRange(block))))
      .map((rule) => new ConditionalFormat(this.context, { name: "conditionalFormat", missing: "throws", find: () => ({ sheetId: block.sheetId, id: rule.cfId }) }));
  }
}

/** Stands in for Excel.ConditionalFormat of type "Custom". */
export class ConditionalFormat extends ClientObject<FormatTarget, Context>
  implements StandsFor<Excel.ConditionalFormat, "custom" | "stopIfTrue" | "type" | "id"> {
  readonly custom = {
    rule: new ConditionalRule(this),
    format: { fill: new ConditionalFill(this), font: new ConditionalFont(this) },
  };

  get id(): string { return this.get("id"); }
  get type(): Excel.ConditionalFormat["type"] { return this.get("type"); }
  get stopIfTrue(): boolean { return this.get("stopIfTrue"); }
  set stopIfTrue(stop: boolean) { this.set("stopIfTrue", stop, () => this.update((rule) => ({ ...rule, stopIfTrue: stop }))); }

  /** Changes the grid's rule; while the queue is worked off. */
  update(change: (rule: FormulaRule) => FormulaRule): void {
    const { sheetId, id } = this.target;
    const rule = rulesOf(this.context, sheetId).find((one) => one.cfId === id);
    if (rule) this.context.host.command(SetCfCommand.id, { subUnitId: sheetId, cfId: id, rule: change(rule) });
  }

  restyle(style: IStyleBase): void {
    this.update((rule) => ({ ...rule, rule: { ...rule.rule, style: { ...rule.rule.style, ...style } } }));
  }

  protected readers() {
    const rule = ({ sheetId, id }: FormatTarget) => rulesOf(this.context, sheetId).find((one) => one.cfId === id);
    return {
      id: ({ id }: FormatTarget) => id,
      type: () => "Custom",
      stopIfTrue: (target: FormatTarget) => rule(target)?.stopIfTrue ?? false,
    };
  }
}

/** Excel also offers R1C1 and local spellings; the bench takes the plain one. */
class ConditionalRule implements StandsFor<Excel.ConditionalFormatRule, "formula"> {
  private text = "";
  constructor(private readonly format: ConditionalFormat) {}
  get formula(): string { return this.text; }
  set formula(formula: string) {
    this.text = formula;
    this.format.context.write(() => this.format.update((rule) => ({ ...rule, rule: { ...rule.rule, value: formula } })));
  }
}

class ConditionalFill implements StandsFor<Excel.ConditionalRangeFill, "color" | "clear"> {
  private value = "";
  constructor(private readonly format: ConditionalFormat) {}
  get color(): string { return this.value; }
  set color(color: string) {
    this.value = color;
    this.format.context.write(() => this.format.restyle({ bg: { rgb: color } }));
  }
  clear(): void { this.format.context.write(() => this.format.restyle({ bg: null })); }
}

class ConditionalFont implements StandsFor<Excel.ConditionalRangeFont, "color" | "bold" | "italic"> {
  private readonly chosen = { color: "", bold: false, italic: false };
  constructor(private readonly format: ConditionalFormat) {}
  get color(): string { return this.chosen.color; }
  set color(color: string) { this.choose({ color }, { cl: { rgb: color } }); }
  get bold(): boolean { return this.chosen.bold; }
  set bold(bold: boolean) { this.choose({ bold }, { bl: bold ? BooleanNumber.TRUE : BooleanNumber.FALSE }); }
  get italic(): boolean { return this.chosen.italic; }
  set italic(italic: boolean) { this.choose({ italic }, { it: italic ? BooleanNumber.TRUE : BooleanNumber.FALSE }); }

  private choose(value: Partial<typeof this.chosen>, style: IStyleBase): void {
    Object.assign(this.chosen, value);
    this.format.context.write(() => this.format.restyle(style));
  }
}
