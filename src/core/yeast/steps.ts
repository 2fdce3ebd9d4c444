import { starterVolumeL, type Culture } from "./starter";

export interface StarterStep {
  readonly volumeL: number;
  /** Cells when it has grown, 10⁹. */
  readonly cells: number;
}

/**
 * A starter in two steps, each of which multiplies the cells by the same factor: that takes the least growth in either.
 * Between them the beer is poured off the yeast. No step where there are cells enough.
 *
 * @throws BrewingError "uncovered" when a step would have to grow more than the table covers
 */
export function starterSteps(cellsNow: number, cellsWanted: number, gravity: number, culture: Culture): [StarterStep, StarterStep] {
  const wanted = Math.max(cellsNow, cellsWanted);
  const between = Math.sqrt(cellsNow * wanted);
  return [
    { volumeL: starterVolumeL(cellsNow, between, gravity, culture), cells: between },
    { volumeL: starterVolumeL(between, wanted, gravity, culture), cells: wanted },
  ];
}
