import type { AnyDescriptor } from "../describe";
import { beerAbv } from "./abv";

export const beerFunctions: readonly AnyDescriptor[] = [beerAbv];
