/** The part of functions.json that the bench reads (Microsoft's metadata for custom functions). */
export interface FunctionsMetadata {
  functions: FunctionMetadata[];
  allowErrorForDataTypeAny?: boolean;
}

export interface FunctionMetadata {
  id: string;
  /** Without the namespace: "BEER.ABV". */
  name: string;
  description?: string;
  helpUrl?: string;
  parameters: ParameterMetadata[];
  result?: { type?: string; dimensionality?: string };
  options?: { allowErrorForDataTypeAny?: boolean; volatile?: boolean };
  allowErrorForDataTypeAny?: boolean;
}

export interface ParameterMetadata {
  name: string;
  description?: string;
  type?: string;
  dimensionality?: string;
  optional?: boolean;
}

/** Whether an error in an input is handed to the function instead of stopping the call. */
export const takesErrors = (metadata: FunctionMetadata): boolean =>
  metadata.allowErrorForDataTypeAny === true || metadata.options?.allowErrorForDataTypeAny === true;
