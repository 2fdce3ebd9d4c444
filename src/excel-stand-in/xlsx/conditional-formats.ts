import type { IStyleBase } from "@univerjs/core";
import type { ConditionalRule } from "hucre/xlsx";
import { blockAddresses, parseBlocks, type Block } from "./addresses";
import { bordersFromFile, bordersToFile } from "./borders";
import { fontFromFile, fontToFile, type StyleContext } from "./cell-styles";
import { colorFromFile, colorToFile } from "./colors";
import { fromFileFormula, toFileFormula } from "./formula-translation";

type FileStyle = NonNullable<ConditionalRule["style"]>;
type ColorScale = NonNullable<ConditionalRule["colorScale"]>;

/** One conditional format in the grid's resource; the first of a sheet's list wins. */
export interface GridConditionalFormat {
  cfId: string;
  ranges: Block[];
  stopIfTrue: boolean;
  rule:
    | { type: "highlightCell"; subType: "formula"; value: string; style: IStyleBase }
    | { type: "highlightCell"; subType: "number"; operator: string; value: number | [number, number]; style: IStyleBase }
    | { type: "colorScale"; config: { index: number; color: string; value: { type: string; value?: number | string } }[] }
    | { type: string; subType?: string };
}

/** The rules that the grid can show. The others (bars, icons, texts, dates) stay in the file as they are. */
export function conditionalFormatsFromFile(
  rules: readonly ConditionalRule[] | undefined,
  context: StyleContext,
  functionNames: readonly string[],
): GridConditionalFormat[] {
  return [...(rules ?? [])]
    .filter(isShown)
    .sort((a, b) => a.priority - b.priority)
    .map((rule, index) => ({
      cfId: `cf${index + 1}`,
      ranges: parseBlocks(rule.range),
      stopIfTrue: rule.stopIfTrue ?? false,
      rule: ruleFromFile(rule, context, functionNames),
    }));
}

const formulasOf = (rule: ConditionalRule): string[] => [rule.formula ?? []].flat();
const numbersOf = (rule: ConditionalRule): number[] => formulasOf(rule).map(Number);

/** Whether the grid shows a file's rule, and so also whether the grid's list decides about it on saving. */
export function isShown(rule: ConditionalRule): boolean {
  if (rule.type === "expression" || rule.type === "colorScale") return true;
  return rule.type === "cellIs" && rule.operator !== undefined && formulasOf(rule).length > 0 && numbersOf(rule).every(Number.isFinite);
}

function ruleFromFile(rule: ConditionalRule, context: StyleContext, functionNames: readonly string[]): GridConditionalFormat["rule"] {
  if (rule.type === "colorScale") {
    return {
      type: "colorScale",
      config: (rule.colorScale?.cfvo ?? []).map((stop, index) => ({
        index,
        color: `#${(rule.colorScale?.colors[index] ?? "FFFFFF").slice(-6)}`,
        value: { type: stop.type, ...(stop.value === undefined ? {} : { value: Number(stop.value) }) },
      })),
    };
  }
  const style = lookFromFile(rule.style, context);
  if (rule.type === "expression") {
    return { type: "highlightCell", subType: "formula", value: fromFileFormula(formulasOf(rule)[0] ?? "", functionNames), style };
  }
  const [first = 0, second] = numbersOf(rule);
  return {
    type: "highlightCell",
    subType: "number",
    operator: rule.operator!,
    value: second === undefined ? first : [first, second],
    style,
  };
}

/** A format over a cell paints with the pattern's background colour, unlike the fill of a cell. */
function lookFromFile(style: FileStyle | undefined, context: StyleContext): IStyleBase {
  const fill = style?.fill?.type === "pattern" ? style.fill : undefined;
  const background = colorFromFile(fill?.bgColor ?? fill?.fgColor, context.theme);
  const borders = bordersFromFile(style?.border, context.theme);
  const usual = { ...context, defaultFont: {} };
  return { ...fontFromFile(style?.font, usual), ...(background ? { bg: { rgb: background } } : {}), ...(borders ? { bd: borders } : {}) };
}

/** All rules of a sheet: those of the grid first, then the ones it does not show. */
export function conditionalFormatsToFile(
  formats: readonly GridConditionalFormat[],
  carried: readonly ConditionalRule[] | undefined,
): ConditionalRule[] {
  const written = formats.flatMap((format) => {
    const rule = ruleToFile(format.rule);
    return rule && format.ranges.length > 0 ? [{ ...rule, range: blockAddresses(format.ranges), stopIfTrue: format.stopIfTrue }] : [];
  });
  const others = (carried ?? []).filter((rule) => !isShown(rule));
  return [...written, ...others].map((rule, index) => ({ ...rule, priority: index + 1 }));
}

type RuleToFile = Omit<ConditionalRule, "range" | "priority" | "stopIfTrue">;

/** Undefined for the kinds of rule that only the grid has. */
function ruleToFile(rule: GridConditionalFormat["rule"]): RuleToFile | undefined {
  if ("config" in rule && rule.type === "colorScale") return { type: "colorScale", colorScale: colorScaleToFile(rule.config) };
  if (!("style" in rule)) return undefined;
  const style = lookToFile(rule.style);
  if (rule.subType === "formula") return { type: "expression", formula: toFileFormula(String(rule.value)), style };
  if (rule.subType !== "number" || !("operator" in rule)) return undefined;
  return { type: "cellIs", operator: rule.operator as ConditionalRule["operator"], formula: [rule.value].flat().map(String), style };
}

function colorScaleToFile(config: { color: string; value: { type: string; value?: number | string } }[]): ColorScale {
  return {
    cfvo: config.map(({ value }) => ({
      type: value.type as ColorScale["cfvo"][number]["type"],
      ...(value.value === undefined ? {} : { value: String(value.value) }),
    })),
    colors: config.map(({ color }) => `FF${colorToFile(color) ?? "FFFFFF"}`),
  };
}

function lookToFile(style: IStyleBase): FileStyle {
  const font = fontToFile(style);
  const background = colorToFile(style.bg?.rgb);
  const border = style.bd ? bordersToFile(style.bd) : undefined;
  return {
    ...(font ? { font } : {}),
    ...(background ? { fill: { type: "pattern", pattern: "solid", bgColor: { rgb: background } } } : {}),
    ...(border ? { border } : {}),
  };
}
