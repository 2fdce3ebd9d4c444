import type { AnyDescriptor } from "../describe";
import { packBottles } from "./bottles";
import { packCheck } from "./check";
import { packPressure } from "./pressure";
import { packPriming } from "./priming";
import { packReady } from "./ready";
import { packResidual } from "./residual";
import { packVolumes } from "./volumes";

export const packFunctions: readonly AnyDescriptor[] = [packResidual, packPriming, packPressure, packVolumes, packCheck, packBottles, packReady];
