import type { AnyDescriptor } from "../describe";
import { heatChill } from "./chill";
import { heatCoil } from "./coil";
import { heatWarm } from "./warm";

export const heatFunctions: readonly AnyDescriptor[] = [heatWarm, heatChill, heatCoil];
