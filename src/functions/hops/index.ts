import type { AnyDescriptor } from "../describe";
import { hopsAged } from "./aged";
import { hopsBalance } from "./balance";
import { hopsDry } from "./dry";
import { hopsIbu } from "./ibu";
import { hopsShare } from "./share";
import { hopsStand } from "./stand";
import { hopsSwap } from "./swap";
import { hopsUtilisation } from "./utilisation";
import { hopsWeigh } from "./weigh";

export const hopsFunctions: readonly AnyDescriptor[] = [
  hopsIbu,
  hopsShare,
  hopsUtilisation,
  hopsStand,
  hopsWeigh,
  hopsDry,
  hopsSwap,
  hopsAged,
  hopsBalance,
];
