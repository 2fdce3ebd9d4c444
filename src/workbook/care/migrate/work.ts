import type { NewChart } from "./new-chart";
import type { ReadSheet } from "./outlook";
import type { Refreshed } from "./refresh";

/** A sheet as it was read, with all that is to be written on it. */
export interface Work extends ReadSheet {
  readonly fresh: Refreshed;
  readonly chart: NewChart | { readonly stays: string } | undefined;
}

export const isNew = (chart: Work["chart"]): chart is NewChart => chart !== undefined && "area" in chart;
