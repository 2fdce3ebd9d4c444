import { argumentName, type AnyDescriptor, type Parameter } from "./describe";
import { parameterText } from "./parameter-text";

/** Excel's metadata for one worksheet function: the shape of functions.json in the Office Add-ins documentation. */
export interface FunctionMetadata {
  readonly id: string;
  readonly name: string;
  readonly description: string;
  /** Where Excel's function window links to; only in a build, which knows the address. */
  readonly helpUrl?: string;
  readonly parameters: readonly {
    readonly name: string;
    readonly description: string;
    readonly type: "any";
    readonly dimensionality: "matrix";
    readonly optional: boolean;
  }[];
  readonly result: { readonly type: "any"; readonly dimensionality: "matrix" };
}

export interface FunctionsJson {
  /** Lets an error in one cell of a range reach us, so that a lifted call fails only in that cell. */
  readonly allowErrorForDataTypeAny: true;
  readonly functions: readonly FunctionMetadata[];
}

/** "BEER.ABV" → "help/beer-abv.html": the page about one function, from the add-in's own address. */
export const helpPagePath = (id: string): string => `help/${id.toLowerCase().replaceAll(".", "-")}.html`;

/**
 * functions.json of the registry. Every parameter is a matrix of anything: one call then serves a whole column.
 *
 * @param base address that the add-in is served from; without it the functions have no link to their help page
 */
export function functionsJson(registry: readonly AnyDescriptor[], base?: string): FunctionsJson {
  return {
    allowErrorForDataTypeAny: true,
    functions: registry.map((descriptor) => ({
      id: descriptor.id,
      name: descriptor.id,
      description: descriptor.summary,
      ...(base === undefined ? {} : { helpUrl: new URL(helpPagePath(descriptor.id), base).href }),
      parameters: Object.entries(descriptor.parameters as Record<string, Parameter>).map(([key, parameter]) => ({
        name: argumentName(key),
        description: parameterText(parameter),
        type: "any",
        dimensionality: "matrix",
        optional: parameter.optional === true,
      })),
      result: { type: "any", dimensionality: "matrix" },
    })),
  };
}
