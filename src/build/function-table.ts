import { argumentName, type AnyDescriptor, type Parameter } from "../functions/describe";

/** The README's table: every worksheet function with its arguments and its one sentence. */
export function functionTable(registry: readonly AnyDescriptor[]): string {
  const rows = registry.map((descriptor) => `| \`${signature(descriptor)}\` | ${escapePipes(descriptor.summary)} |`);
  return ["| function | gives |", "|---|---|", ...rows].join("\n");
}

/** "BEER.ABV(original_gravity, final_gravity, [method])" */
export function signature(descriptor: AnyDescriptor): string {
  const parameters = Object.entries(descriptor.parameters as Record<string, Parameter>);
  const names = parameters.map(([key, parameter]) => (parameter.optional === true ? `[${argumentName(key)}]` : argumentName(key)));
  return `${descriptor.id}(${names.join(", ")})`;
}

const escapePipes = (text: string): string => text.replaceAll("|", "\\|");
