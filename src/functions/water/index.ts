import type { AnyDescriptor } from "../describe";
import { waterAcid } from "./acid";
import { waterAlkalinity } from "./alkalinity";
import { waterBalance } from "./balance";
import { waterBlend } from "./blend";
import { waterBoils } from "./boils";
import { waterBudgetFunction } from "./budget";
import { waterConvert } from "./convert";
import { waterDechlorinate } from "./dechlorinate";
import { waterIons } from "./ions";
import { waterStep } from "./step";
import { waterStrike } from "./strike";
import { waterTarget } from "./target";

export const waterFunctions: readonly AnyDescriptor[] = [
  waterBudgetFunction,
  waterBoils,
  waterStrike,
  waterStep,
  waterIons,
  waterBlend,
  waterTarget,
  waterConvert,
  waterBalance,
  waterAlkalinity,
  waterAcid,
  waterDechlorinate,
];
