import type { Injector } from "@univerjs/core";
import { IFunctionService } from "@univerjs/engine-formula";
import { CustomFunctionError, ErrorCode } from "./custom-function-error";
import { CustomFunctionExecutor } from "./custom-function-executor";
import type { Blank } from "./custom-function-input";
import type { CellErrors } from "./cell-errors";
import { UnknownFunctions } from "./unknown-functions";
import { takesErrors, type FunctionMetadata, type FunctionsMetadata } from "./custom-functions-metadata";

/** The global `CustomFunctions` that functions.js expects, as far as pure synchronous functions need it. */
export interface CustomFunctionsGlobal {
  associate(id: string, implementation: Function): void;
  associate(mappings: Record<string, Function>): void;
  delayInitialization(): void;
  Error: typeof CustomFunctionError;
  ErrorCode: typeof ErrorCode;
}

export interface CustomFunctionsHost {
  CustomFunctions: CustomFunctionsGlobal;
  /** The worksheet name of each function with its metadata, for help and for tests. */
  functions: ReadonlyMap<string, FunctionMetadata>;
  setBlank(blank: Blank): void;
  /** Formulas entered before Excel knew the functions. */
  unknown: UnknownFunctions;
  /** How often functions were called since the last reset, for measuring. */
  callCounts: Map<string, number>;
}

/** Registers every function of functions.json with the engine as NAMESPACE.NAME; `associate` supplies what they do. */
export function hostCustomFunctions(
  injector: Injector,
  metadata: FunctionsMetadata,
  namespace: string,
  cellErrors: CellErrors,
): CustomFunctionsHost {
  const implementations = new Map<string, Function>();
  const functions = new Map<string, FunctionMetadata>();
  const callCounts = new Map<string, number>();
  const unknown = new UnknownFunctions(injector, namespace);
  let blank: Blank = "zero";
  const service = injector.get(IFunctionService);
  for (const entry of metadata.functions) {
    const name = `${namespace}.${entry.name}`.toUpperCase();
    functions.set(name, entry);
    service.registerExecutors(
      new CustomFunctionExecutor(name, entry, {
        cellErrors,
        blank: () => blank,
        unknown,
        implementation: (id) => {
          callCounts.set(name, (callCounts.get(name) ?? 0) + 1);
          return implementations.get(id.toUpperCase());
        },
        takesErrors: metadata.allowErrorForDataTypeAny === true || takesErrors(entry),
      }),
    );
  }
  function associate(first: string | Record<string, Function>, implementation?: Function): void {
    const mappings = typeof first === "string" ? { [first]: implementation! } : first;
    for (const [id, one] of Object.entries(mappings)) implementations.set(id.toUpperCase(), one);
  }
  const CustomFunctions: CustomFunctionsGlobal = { associate, delayInitialization: () => undefined, Error: CustomFunctionError, ErrorCode };
  return {
    CustomFunctions,
    functions,
    callCounts,
    unknown,
    setBlank: (value) => {
      blank = value;
    },
  };
}
