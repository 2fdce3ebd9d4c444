import type { ComponentType } from "preact";
import { NewBatch } from "./new-batch/new-batch";

/** Where in the job a screen belongs; the pane's first row of buttons. */
export const places = ["Plan", "Brew", "Ferment", "Package", "Season", "Share", "Help"] as const;
export type Place = (typeof places)[number];

export interface Screen {
  readonly place: Place;
  readonly title: string;
  /** Fetched when the screen is first opened, so that the pane itself opens fast. */
  readonly load: () => ComponentType | Promise<ComponentType>;
}

/** Every screen of the pane, by place in the job. A place without screens is not shown. */
export const screens: readonly Screen[] = [
  { place: "Plan", title: "New batch", load: () => NewBatch },
  { place: "Plan", title: "Scale and copy", load: async () => (await import(/* webpackChunkName: "pane-scale" */ "./scale/scale-and-copy")).ScaleAndCopy },
  { place: "Season", title: "Season", load: async () => (await import(/* webpackChunkName: "pane-season" */ "./season/season")).Season },
  { place: "Help", title: "Explain", load: async () => (await import(/* webpackChunkName: "pane-explain" */ "./explain/explain-screen")).ExplainScreen },
  { place: "Season", title: "Kit", load: async () => (await import(/* webpackChunkName: "pane-kit" */ "./kit/kit")).Kit },
  { place: "Help", title: "Functions", load: async () => (await import(/* webpackChunkName: "pane-functions" */ "./functions/guide")).FunctionsGuide },
  { place: "Help", title: "Older sheets", load: async () => (await import(/* webpackChunkName: "pane-older-sheets" */ "./older-sheets/older-sheets")).OlderSheets },
];
