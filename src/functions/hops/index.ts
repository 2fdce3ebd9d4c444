import type { AnyDescriptor } from "../describe";
import { hopsAged } from "./aged";
import { hopsBalance } from "./balance";
import { hopsIbu } from "./ibu";
import { hopsShare } from "./share";
import { hopsSwap } from "./swap";
import { hopsUtilisation } from "./utilisation";

export const hopsFunctions: readonly AnyDescriptor[] = [hopsIbu, hopsShare, hopsUtilisation, hopsSwap, hopsAged, hopsBalance];
