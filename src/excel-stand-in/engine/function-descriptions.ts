import type { Injector } from "@univerjs/core";
import { FunctionType, type IFunctionInfo } from "@univerjs/engine-formula";
import { IDescriptionService } from "@univerjs/sheets-formula";
import type { FunctionMetadata } from "./custom-functions-metadata";

/** Tells the grid's autocomplete and argument hints about our functions. Call it once a first workbook exists: before that there is no such service. */
export function describeFunctions(injector: Injector, functions: ReadonlyMap<string, FunctionMetadata>): void {
  injector.get(IDescriptionService).registerDescriptions([...functions].map(([name, metadata]) => describe(name, metadata)));
}

function describe(functionName: string, metadata: FunctionMetadata): IFunctionInfo {
  const text = metadata.description ?? "";
  return {
    functionName,
    functionType: FunctionType.User,
    description: text,
    abstract: text,
    functionParameter: metadata.parameters.map((parameter) => ({
      name: parameter.name,
      detail: parameter.description ?? "",
      example: "A1",
      require: parameter.optional ? 0 : 1,
      repeat: 0,
    })),
  };
}
