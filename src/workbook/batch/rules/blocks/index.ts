import type { BlockKey } from "../../fields/blocks";
import type { UnitWords } from "../../unit-words";
import { noGylebook } from "../no-gylebook";
import type { CheckLine } from "../rule";
import { beforeBoilLine } from "./before-boil";
import type { Chosen } from "./chosen";
import { kegLineLine } from "./keg-line";
import { lateHopsLine } from "./late-hops";
import { mashRunOffLine } from "./mash";
import { partsOfWortLine } from "./parts";
import { starterLine } from "./starter";
import { waterTreatmentLine } from "./water";

const lines: Readonly<Record<BlockKey, (chosen: Chosen, words: UnitWords) => CheckLine>> = {
  waterTreatment: waterTreatmentLine,
  mashRunOff: mashRunOffLine,
  beforeBoil: beforeBoilLine,
  lateHops: lateHopsLine,
  starter: starterLine,
  partsOfWort: partsOfWortLine,
  kegLine: kegLineLine,
};

/** The line of checks that closes a block. */
export function blockLine(key: BlockKey, chosen: Chosen, words: UnitWords): CheckLine {
  const line = lines[key](chosen, words);
  return { ...line, steps: [noGylebook(chosen.units), ...line.steps] };
}
