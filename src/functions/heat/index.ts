import type { AnyDescriptor } from "../describe";
import { heatBoilOff } from "./boil-off";
import { heatChill } from "./chill";
import { heatCoil } from "./coil";
import { heatCounterflow } from "./counterflow";
import { heatWarm } from "./warm";

export const heatFunctions: readonly AnyDescriptor[] = [heatWarm, heatBoilOff, heatChill, heatCoil, heatCounterflow];
