import type { AnyDescriptor } from "../describe";
import { beerAbv } from "./abv";
import { beerAbw } from "./abw";
import { beerAdded } from "./added";
import { beerBlend } from "./blend";
import { beerCarbs } from "./carbs";
import { beerEbc } from "./ebc";
import { beerEnergy } from "./energy";
import { beerExtract } from "./extract";
import { beerHex } from "./hex";
import { beerLabel } from "./label";
import { beerLovibond } from "./lovibond";
import { beerOriginal } from "./original";
import { beerRefractometer } from "./refractometer";
import { beerSrm } from "./srm";
import { beerStyle } from "./style";

/** What became of the wort: strength, body, colour. */
export const beerFunctions: readonly AnyDescriptor[] = [
  beerAbv,
  beerAbw,
  beerExtract,
  beerEnergy,
  beerCarbs,
  beerOriginal,
  beerAdded,
  beerBlend,
  beerLabel,
  beerRefractometer,
  beerEbc,
  beerSrm,
  beerLovibond,
  beerHex,
  beerStyle,
];
