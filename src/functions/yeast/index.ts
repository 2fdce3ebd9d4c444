import type { AnyDescriptor } from "../describe";
import { yeastAged } from "./aged";
import { yeastAttenuation } from "./attenuation";
import { yeastCells } from "./cells";
import { yeastExpect } from "./expect";
import { yeastFinish } from "./finish";
import { yeastOxygen } from "./oxygen";
import { yeastPacks } from "./packs";
import { yeastStarter } from "./starter";
import { yeastSteps } from "./steps";
import { yeastViability } from "./viability";

export const yeastFunctions: readonly AnyDescriptor[] = [
  yeastCells,
  yeastPacks,
  yeastViability,
  yeastAged,
  yeastStarter,
  yeastSteps,
  yeastOxygen,
  yeastFinish,
  yeastExpect,
  yeastAttenuation,
];
