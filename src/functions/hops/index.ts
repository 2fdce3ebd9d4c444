import type { AnyDescriptor } from "../describe";
import { hopsAged } from "./aged";
import { hopsBalance } from "./balance";
import { hopsIbu } from "./ibu";
import { hopsShare } from "./share";
import { hopsStand } from "./stand";
import { hopsSwap } from "./swap";
import { hopsUtilisation } from "./utilisation";

export const hopsFunctions: readonly AnyDescriptor[] = [hopsIbu, hopsShare, hopsUtilisation, hopsStand, hopsSwap, hopsAged, hopsBalance];
