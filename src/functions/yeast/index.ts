import type { AnyDescriptor } from "../describe";
import { yeastAttenuation } from "./attenuation";
import { yeastCells } from "./cells";
import { yeastExpect } from "./expect";
import { yeastFinish } from "./finish";
import { yeastPacks } from "./packs";
import { yeastStarter } from "./starter";
import { yeastViability } from "./viability";

export const yeastFunctions: readonly AnyDescriptor[] = [
  yeastCells,
  yeastPacks,
  yeastViability,
  yeastStarter,
  yeastFinish,
  yeastExpect,
  yeastAttenuation,
];
