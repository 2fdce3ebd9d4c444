import type { BatchContents, MaltLine } from "../contents";
import { lovibondFromEbc } from "../../../core/wort/colour-scales";

/** One line of the bill with what a unit of its mass brings on the kit it was planned for, and on the new one. */
interface Share {
  readonly line: MaltLine;
  readonly pointsBefore: number;
  readonly pointsAfter: number;
  readonly colour: number;
}

/**
 * The malt bill for another volume and another kit: gravity held, and colour too where the bill allows it. When only the
 * volume changes every line grows alike. When the new kit wins another share of the grain's sugar, pale and dark
 * lines need factors of their own, since a grain's colour does not depend on how much sugar it gives.
 *
 * @param volumeFactor new over old volume that shares the extract
 * @returns one factor for each line
 */
export function maltFactors(batch: BatchContents, volumeFactor: number, efficiencyAfterPercent: number): number[] {
  const { malt, units, kit } = batch;
  const efficiency = (line: MaltLine, percent: number): number =>
    line.handling === "mash" || line.handling === "steep" ? percent / 100 : 1;
  const shares: Share[] = malt.map((line) => ({
    line,
    pointsBefore: line.mass * line.yieldPercent * efficiency(line, kit.grainEfficiencyPercent),
    pointsAfter: line.mass * line.yieldPercent * efficiency(line, efficiencyAfterPercent),
    colour: line.mass * (units === "us" ? line.colour : lovibondFromEbc(line.colour)),
  }));
  const sum = (key: "pointsBefore" | "pointsAfter" | "colour", of = shares): number => of.reduce((total, share) => total + share[key], 0);
  const wantedPoints = sum("pointsBefore");
  if (wantedPoints === 0 || sum("pointsAfter") === 0) return malt.map(() => volumeFactor);
  const alike = wantedPoints / sum("pointsAfter");
  const wantedColour = sum("colour");
  const mean = wantedColour / malt.reduce((total, { mass }) => total + mass, 0);
  const isDark = ({ line, colour }: Share): boolean => line.mass > 0 && colour / line.mass > mean * 1.01;
  const dark = shares.filter(isDark);
  const pale = shares.filter((share) => !isDark(share));
  // Two unknowns, pale and dark: their points must add up to the wanted points, their colour to the wanted colour.
  const [a, b, c, d] = [sum("pointsAfter", pale), sum("pointsAfter", dark), sum("colour", pale), sum("colour", dark)];
  const determinant = a * d - b * c;
  const paleFactor = (wantedPoints * d - b * wantedColour) / determinant;
  const darkFactor = (a * wantedColour - c * wantedPoints) / determinant;
  const usable =
    Number.isFinite(paleFactor) && Number.isFinite(darkFactor) && paleFactor > 0.2 && darkFactor > 0.2 && paleFactor < 5 && darkFactor < 5;
  return shares.map((share) => volumeFactor * (usable ? (isDark(share) ? darkFactor : paleFactor) : alike));
}
