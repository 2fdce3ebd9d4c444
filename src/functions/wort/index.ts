import type { AnyDescriptor } from "../describe";
import { wortBill } from "./bill";
import { wortColour } from "./colour";
import { wortEfficiency } from "./efficiency";
import { wortEnrich } from "./enrich";
import { wortGravity } from "./gravity";
import { wortHydrometer } from "./hydrometer";
import { wortKettle } from "./kettle";
import { wortMix } from "./mix";
import { wortPlato } from "./plato";
import { wortPoints } from "./points";
import { wortReduce } from "./reduce";
import { wortRefractometer } from "./refractometer";
import { wortSg } from "./sg";
import { wortThin } from "./thin";
import { wortYield } from "./yield";

/** From the sugar in the wort to the wort in the kettle. */
export const wortFunctions: readonly AnyDescriptor[] = [
  wortSg,
  wortPlato,
  wortHydrometer,
  wortRefractometer,
  wortGravity,
  wortColour,
  wortMix,
  wortThin,
  wortReduce,
  wortEnrich,
  wortBill,
  wortKettle,
  wortEfficiency,
  wortYield,
  wortPoints,
];
