import { argumentName, type AnyDescriptor, type Parameter } from "../functions/describe";
import { placeOf, places } from "../functions/places";
import { questions } from "../functions/questions";

/** The README's tables, one for each place in the brewery: the question that somebody has, and the function that answers it. */
export function functionTable(registry: readonly AnyDescriptor[]): string {
  return Object.entries(places)
    .map(([place, title]) => {
      const rows = registry
        .filter(({ id }) => placeOf(id) === place)
        .map((descriptor) => `| ${escapePipes(questions[descriptor.id] ?? descriptor.summary)} | \`${signature(descriptor)}\` |`);
      return rows.length === 0 ? "" : [`**${title}**`, "", "| question | function |", "|---|---|", ...rows].join("\n");
    })
    .filter((table) => table !== "")
    .join("\n\n");
}

/** "BEER.ABV(original_gravity, final_gravity, [method])" */
export function signature(descriptor: AnyDescriptor): string {
  const parameters = Object.entries(descriptor.parameters as Record<string, Parameter>);
  const names = parameters.map(([key, parameter]) => (parameter.optional === true ? `[${argumentName(key)}]` : argumentName(key)));
  return `${descriptor.id}(${names.join(", ")})`;
}

const escapePipes = (text: string): string => text.replaceAll("|", "\\|");
