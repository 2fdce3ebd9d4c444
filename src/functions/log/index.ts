import type { AnyDescriptor } from "../describe";
import { logCurve } from "./curve";
import { logForecast } from "./forecast";
import { logSteady } from "./steady";

export const logFunctions: readonly AnyDescriptor[] = [logSteady, logForecast, logCurve];
