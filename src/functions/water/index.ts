import type { AnyDescriptor } from "../describe";
import { waterBoils } from "./boils";
import { waterBudgetFunction } from "./budget";

export const waterFunctions: readonly AnyDescriptor[] = [waterBudgetFunction, waterBoils];
