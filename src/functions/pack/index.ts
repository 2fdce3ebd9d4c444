import type { AnyDescriptor } from "../describe";
import { packBottles } from "./bottles";
import { packCheck } from "./check";
import { packDose } from "./dose";
import { packInside } from "./inside";
import { packLine } from "./line";
import { packPressure } from "./pressure";
import { packPriming } from "./priming";
import { packReady } from "./ready";
import { packResidual } from "./residual";
import { packSpund } from "./spund";
import { packVolumes } from "./volumes";

export const packFunctions: readonly AnyDescriptor[] = [
  packResidual,
  packPriming,
  packDose,
  packPressure,
  packVolumes,
  packSpund,
  packLine,
  packCheck,
  packInside,
  packBottles,
  packReady,
];
