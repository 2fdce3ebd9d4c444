import { argumentName, type Column, type Limits, type Parameter } from "../../functions/describe";
import { limitText } from "../../functions/messages";
import { usualFigure } from "../../functions/parameter-text";
import { bothUnits, showQuantity, type QuantityName } from "../../functions/quantities";
import { layoutText } from "../../functions/read-range";
import { escapeHtml, htmlList } from "./html";
import { linked } from "./linked";

/** One line of the table of arguments: name, meaning, unit, range, when left out. */
export function argumentRow(key: string, parameter: Parameter, own: string): string[] {
  const whenLeftOut = parameter.optional === true ? defaultText(parameter) : "needed";
  return [`<code>${argumentName(key)}</code>`, meaning(parameter, own), ...unitAndRange(parameter), whenLeftOut];
}

function meaning(parameter: Parameter, own: string): string {
  const figure = parameter.kind === "number" ? usualFigure(parameter) : "";
  const words = `${linked(parameter.doc, own)}${figure === "" ? "" : ` For example ${figure}.`}`;
  if (parameter.kind === "choice")
    return `${words} One of ${parameter.choices.map((choice) => `<code>${escapeHtml(choice)}</code>`).join(", ")}.`;
  if (parameter.kind !== "table") return words;
  const layouts = parameter.layouts.map((columns) => escapeHtml(layoutText(parameter, columns)));
  const columns = Object.entries(parameter.columns).map(([key, column]) => columnText(key, column));
  return `${words}<br>Columns: ${layouts.join("; or ")}.${htmlList(columns)}`;
}

function columnText(key: string, column: Column): string {
  const [unit, range] = unitAndRange(column);
  const choices =
    column.kind === "choice" ? ` One of ${column.choices.map((choice) => `<code>${escapeHtml(choice)}</code>`).join(", ")}.` : "";
  const bounds = range ? ` <span class="range">${unit ? `${unit}; ` : ""}${range}</span>` : "";
  return `<code>${argumentName(key)}</code> ${escapeHtml(column.doc)}${choices}${bounds}`;
}

/** Unit and range in both systems, on two lines where they differ. */
function unitAndRange(parameter: Parameter): [string, string] {
  if (parameter.kind !== "number" && parameter.kind !== "list") return ["", ""];
  const covered =
    parameter.kind === "number" && parameter.covered
      ? `<br>source covers ${bothRanges(parameter.quantity, { atLeast: parameter.covered.from, atMost: parameter.covered.to })}`
      : "";
  const slip = parameter.kind === "number" && parameter.slip ? `<br>${escapeHtml(parameter.slip.why)}` : "";
  const unit = parameter.quantity === "date" ? "" : escapeHtml(bothUnits(parameter.quantity));
  return [unit, `${bothRanges(parameter.quantity, parameter.limits)}${covered}${slip}`];
}

function bothRanges(name: QuantityName, limits: Limits): string {
  return [...new Set((["metric", "us"] as const).map((system) => limitText(name, limits, system)))].map(escapeHtml).join("<br>");
}

function defaultText(parameter: Parameter): string {
  if (parameter.kind === "choice" && parameter.default !== undefined) return `<code>${escapeHtml(parameter.default)}</code>`;
  if (parameter.kind !== "number" || parameter.default === undefined) return "may be left out";
  const { quantity: name, default: value } = parameter;
  return [...new Set((["metric", "us"] as const).map((system) => showQuantity(name, value, system)))].map(escapeHtml).join("<br>");
}
