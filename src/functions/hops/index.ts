import type { AnyDescriptor } from "../describe";
import { hopsIbu } from "./ibu";
import { hopsShare } from "./share";
import { hopsUtilisation } from "./utilisation";

export const hopsFunctions: readonly AnyDescriptor[] = [hopsIbu, hopsShare, hopsUtilisation];
