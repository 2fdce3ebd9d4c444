import type { AnyDescriptor } from "../describe";
import { waterAcid } from "./acid";
import { waterAlkalinity } from "./alkalinity";
import { waterBlend } from "./blend";
import { waterBoils } from "./boils";
import { waterBudgetFunction } from "./budget";
import { waterDechlorinate } from "./dechlorinate";
import { waterIons } from "./ions";
import { waterStep } from "./step";
import { waterStrike } from "./strike";

export const waterFunctions: readonly AnyDescriptor[] = [
  waterBudgetFunction,
  waterBoils,
  waterStrike,
  waterStep,
  waterIons,
  waterBlend,
  waterAlkalinity,
  waterAcid,
  waterDechlorinate,
];
