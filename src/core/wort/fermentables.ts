/** How a fermentable gives up its extract: only mashing and steeping depend on the brewer's efficiency. */
export type Handling = "mash" | "steep" | "extract" | "sugar";

export interface Fermentable {
  readonly massKg: number;
  /** Extract, % by mass of the fermentable as it is (not of its dry matter). */
  readonly yieldPercent: number;
  readonly handling: Handling;
}

/** Extract in the fermentables, kg: `grain` at full yield, before efficiency; `dissolved` is all there already. */
export function extractKg(fermentables: readonly Fermentable[]): { grain: number; dissolved: number } {
  const total = { grain: 0, dissolved: 0 };
  for (const { massKg, yieldPercent, handling } of fermentables) {
    const part = handling === "mash" || handling === "steep" ? "grain" : "dissolved";
    total[part] += (massKg * yieldPercent) / 100;
  }
  return total;
}
