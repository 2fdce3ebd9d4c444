import type { AnyDescriptor } from "../describe";
import { logSteady } from "./steady";

export const logFunctions: readonly AnyDescriptor[] = [logSteady];
