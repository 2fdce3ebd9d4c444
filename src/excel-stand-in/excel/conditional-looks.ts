import { BooleanNumber, type IStyleBase } from "@univerjs/core";
import { ClientObject } from "./client-object";
import type { ConditionalFormat, FormatTarget } from "./conditional-formats";
import type { Context } from "./context";
import type { StandsFor } from "./standing";

/** Base of what hangs below a conditional format: it stands for the same rule. */
abstract class ConditionalPart extends ClientObject<FormatTarget, Context> {
  constructor(protected readonly owner: ConditionalFormat) {
    super(owner.context, { name: "conditionalFormat", missing: "null", find: () => (owner.isNullObject ? undefined : owner.target) });
  }

  protected restyle(property: string, value: unknown, style: IStyleBase): void {
    this.set(property, value, () => this.owner.restyle(style));
  }

  protected get style(): IStyleBase {
    return this.owner.rule().rule.style ?? {};
  }
}

/** Stands in for Excel.CustomConditionalFormat. */
export class CustomConditionalFormat
  extends ConditionalPart
  implements StandsFor<Excel.CustomConditionalFormat, keyof CustomConditionalFormat>
{
  readonly rule = new ConditionalFormatRule(this.owner);
  readonly format = new ConditionalRangeFormat(this.owner);

  protected override children() {
    return { rule: () => this.rule, format: () => this.format };
  }
}

/** Stands in for Excel.ConditionalFormatRule. Excel also offers R1C1 and local spellings; the bench takes the plain one. */
export class ConditionalFormatRule extends ConditionalPart implements StandsFor<Excel.ConditionalFormatRule, keyof ConditionalFormatRule> {
  declare formula: string;

  protected override changes() {
    return {
      formula: (formula: string) =>
        this.set("formula", formula, () => this.owner.update((rule) => ({ ...rule, rule: { ...rule.rule, value: formula } }))),
    };
  }

  protected override readers() {
    return { formula: () => this.owner.rule().rule.value };
  }
}

/** Stands in for Excel.ConditionalRangeFormat. */
export class ConditionalRangeFormat
  extends ConditionalPart
  implements StandsFor<Excel.ConditionalRangeFormat, keyof ConditionalRangeFormat>
{
  readonly fill = new ConditionalRangeFill(this.owner);
  readonly font = new ConditionalRangeFont(this.owner);

  protected override children() {
    return { fill: () => this.fill, font: () => this.font };
  }
}

/** Stands in for Excel.ConditionalRangeFill. */
export class ConditionalRangeFill extends ConditionalPart implements StandsFor<Excel.ConditionalRangeFill, keyof ConditionalRangeFill> {
  declare color: string;

  protected override changes() {
    return {
      color: (color: string) => this.restyle("color", color, { bg: { rgb: color } }),
    };
  }

  protected override readers() {
    return { color: () => this.style.bg?.rgb?.toUpperCase() ?? "" };
  }
}

/** Stands in for Excel.ConditionalRangeFont. */
export class ConditionalRangeFont extends ConditionalPart implements StandsFor<Excel.ConditionalRangeFont, keyof ConditionalRangeFont> {
  declare color: string;
  declare bold: boolean;

  protected override changes() {
    return {
      color: (color: string) => this.restyle("color", color, { cl: { rgb: color } }),
      bold: (bold: boolean) => this.restyle("bold", bold, { bl: bold ? BooleanNumber.TRUE : BooleanNumber.FALSE }),
    };
  }

  protected override readers() {
    return {
      color: () => this.style.cl?.rgb?.toUpperCase() ?? "",
      bold: () => this.style.bl === BooleanNumber.TRUE,
    };
  }
}
