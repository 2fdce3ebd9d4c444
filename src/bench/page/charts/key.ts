import type { Series } from "./chart-data";
import type { Look, Symbol } from "./series-look";

const namespace = "http://www.w3.org/2000/svg";

/** The names of the series, each with a sample of how it is drawn. */
export function keyOf(series: readonly Series[]): HTMLElement {
  const list = document.createElement("ul");
  for (const { name, look, unlisted } of series) {
    if (unlisted) continue;
    const item = document.createElement("li");
    item.append(sample(look), name);
    list.append(item);
  }
  return list;
}

const outlines: Readonly<Record<Symbol, string>> = {
  circle: "M13 2a4 4 0 1 0 .1 0Z",
  square: "M9 2h8v8h-8Z",
  triangle: "M13 1l5 9h-10Z",
  diamond: "M13 0l5 6-5 6-5-6Z",
  star: "M13 0l2 4h5l-4 3 2 5-5-3-5 3 2-5-4-3h5Z",
  times: "M9 2l8 8M17 2l-8 8",
  plus: "M13 1v10M8 6h10",
};

function sample({ color, line, column, dash, lineWidth, symbol }: Look): SVGElement {
  const svg = make("svg", { width: "26", height: "12", "aria-hidden": "true" });
  if (column) svg.append(make("path", { d: "M8 1h10v10h-10Z", fill: color }));
  if (line && !column)
    svg.append(
      make("path", {
        d: "M1 6h24",
        stroke: color,
        "stroke-width": String(lineWidth),
        ...(dash && { "stroke-dasharray": dash, "stroke-linecap": "round" }),
      }),
    );
  if (symbol && !column) svg.append(make("path", { d: outlines[symbol], fill: color, stroke: color }));
  return svg;
}

function make(tag: string, attributes: Readonly<Record<string, string>>): SVGElement {
  const made = document.createElementNS(namespace, tag);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value);
  return made;
}
