import type { AnyDescriptor } from "../describe";
import { yeastAttenuation } from "./attenuation";
import { yeastCells } from "./cells";
import { yeastFinish } from "./finish";
import { yeastPacks } from "./packs";

export const yeastFunctions: readonly AnyDescriptor[] = [yeastCells, yeastPacks, yeastFinish, yeastAttenuation];
