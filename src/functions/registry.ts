import { wortFunctions } from "./wort";
import { hopsFunctions } from "./hops";
import { waterFunctions } from "./water";
import { mashFunctions } from "./mash";
import { heatFunctions } from "./heat";
import { cleanFunctions } from "./clean";
import { yeastFunctions } from "./yeast";
import { logFunctions } from "./log";
import { beerFunctions } from "./beer";
import { packFunctions } from "./pack";
import { tasteFunctions } from "./taste";
import { dayFunctions } from "./day";
import { gaugeSpread } from "./gauge/spread";
import type { AnyDescriptor } from "./describe";

/** In the order of the brewery. */
const ofTheBrewery: readonly AnyDescriptor[] = [
  ...wortFunctions,
  ...hopsFunctions,
  ...waterFunctions,
  ...mashFunctions,
  ...heatFunctions,
  ...cleanFunctions,
  ...yeastFunctions,
  ...logFunctions,
  ...beerFunctions,
  ...packFunctions,
  ...tasteFunctions,
  ...dayFunctions,
];

/** Every worksheet function. A function that is not in this table does not exist. */
export const registry: readonly AnyDescriptor[] = [...ofTheBrewery, gaugeSpread(ofTheBrewery)];

const byId = new Map(registry.map((descriptor) => [descriptor.id, descriptor]));

/** The descriptor of "BEER.ABV"; throws when there is none, which is a bug of ours. */
export function functionNamed(id: string): AnyDescriptor {
  const descriptor = byId.get(id);
  if (!descriptor) throw new Error(`there is no function ${id}`);
  return descriptor;
}
