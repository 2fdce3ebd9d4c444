import type { NumberParameter, Parameter } from "./describe";
import { bothUnits, quantity, showQuantity, type QuantityName } from "./quantities";
import { layoutText } from "./read-range";

/** The argument's meaning with its units, a usual figure, choices, columns and what holds when it is left out: one text for Excel and the pane. */
export function parameterText(parameter: Parameter): string {
  return [parameter.doc, allowedText(parameter), leftOutText(parameter)].filter((part) => part !== "").join(" ");
}

function allowedText(parameter: Parameter): string {
  if (parameter.kind === "text" || parameter.kind === "cells") return "";
  if (parameter.kind === "choice") return `One of: ${parameter.choices.join(", ")}.`;
  // The fullest one first; that a column may be missing is said in the meaning.
  if (parameter.kind === "table") return `Columns: ${layoutText(parameter, parameter.layouts[0] ?? [])}.`;
  const unit = unitText(parameter.quantity, parameter.doc);
  const figure = parameter.kind === "number" ? usualFigure(parameter) : "";
  if (figure === "") return unit === "" ? "" : `In ${unit}.`;
  return unit === "" ? `For example ${figure}.` : `In ${unit}, for example ${figure}.`;
}

/** Both units, unless the words name the only one already. A date has none. */
function unitText(name: QuantityName, words: string): string {
  const { metric, us } = quantity(name).unit;
  return name === "date" || (metric === us && words.includes(metric)) ? "" : bothUnits(name);
}

/** "20 or 5.3": a usual value in both unit systems, for an argument that must be given and whose words name no figure yet. */
export function usualFigure({ doc, optional, quantity: name, typical }: NumberParameter): string {
  if (optional === true || name === "date" || namesFigure(doc)) return "";
  const { fromCore, unit } = quantity(name);
  const metric = name === "gravity" ? typical.toFixed(3) : String(typical);
  if (unit.metric === unit.us) return metric;
  const us = fromCore(typical, "us");
  return `${metric} or ${name === "temperature" ? Math.round(us) : Number(us.toPrecision(2))}`;
}

/** Formulas of substances, the temperature at which a volume is measured and what an empty cell counts as are no usual figures. */
const namesFigure = (words: string): boolean => /\d/.test(words.replace(/CaCO3|Cl2|CO2|20 °C|counts as 0/g, ""));

/** What holds when an optional argument is left out, where the meaning does not say it. */
function leftOutText(parameter: Parameter): string {
  if (parameter.optional !== true || parameter.doc.includes("left out") || !("default" in parameter) || parameter.default === undefined)
    return "";
  if (parameter.kind === "choice") return `When left out: ${parameter.default}.`;
  const { quantity: name, default: value } = parameter as NumberParameter & { default: number };
  const shown = value === 0 ? ["0"] : [...new Set([showQuantity(name, value, "metric"), showQuantity(name, value, "us")])];
  return `When left out: ${shown.join(" or ")}.`;
}
