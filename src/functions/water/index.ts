import type { AnyDescriptor } from "../describe";
import { waterAlkalinity } from "./alkalinity";
import { waterBoils } from "./boils";
import { waterBudgetFunction } from "./budget";
import { waterDechlorinate } from "./dechlorinate";
import { waterStep } from "./step";
import { waterStrike } from "./strike";

export const waterFunctions: readonly AnyDescriptor[] = [waterBudgetFunction, waterBoils, waterStrike, waterStep, waterAlkalinity, waterDechlorinate];
