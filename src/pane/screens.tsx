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
  {
    place: "Plan",
    title: "More on the sheet",
    load: async () => (await import(/* webpackChunkName: "pane-grow" */ "./grow/grow")).Grow,
  },
  {
    place: "Plan",
    title: "Typical malts",
    load: async () => (await import(/* webpackChunkName: "pane-ingredients" */ "./ingredients/ingredients")).Ingredients,
  },
  {
    place: "Plan",
    title: "Scale and copy",
    load: async () => (await import(/* webpackChunkName: "pane-scale" */ "./scale/scale-and-copy")).ScaleAndCopy,
  },
  {
    place: "Plan",
    title: "Pages to print",
    load: async () => (await import(/* webpackChunkName: "pane-pages" */ "./pages/pages-to-print")).PagesToPrint,
  },
  {
    place: "Brew",
    title: "Brew day",
    load: async () => (await import(/* webpackChunkName: "pane-brew-day" */ "./brew-day/brew-day")).BrewDay,
  },
  { place: "Brew", title: "Why", load: async () => (await import(/* webpackChunkName: "pane-why" */ "./brew-day/why")).Why },
  {
    place: "Brew",
    title: "Too high, too low",
    load: async () => (await import(/* webpackChunkName: "pane-correction" */ "./correction/correction")).TooHighTooLow,
  },
  {
    place: "Ferment",
    title: "Reading",
    load: async () => (await import(/* webpackChunkName: "pane-reading" */ "./reading/reading")).Reading,
  },
  {
    place: "Ferment",
    title: "Fermentation",
    load: async () => (await import(/* webpackChunkName: "pane-fermentation" */ "./fermentation/fermentation")).Fermentation,
  },
  {
    place: "Ferment",
    title: "Readings from a file",
    load: async () => (await import(/* webpackChunkName: "pane-readings-file" */ "./readings/readings-from-file")).ReadingsFromFile,
  },
  {
    place: "Ferment",
    title: "Calendar",
    load: async () => (await import(/* webpackChunkName: "pane-calendar" */ "./calendar/calendar")).Calendar,
  },
  {
    place: "Package",
    title: "Packaging",
    load: async () => (await import(/* webpackChunkName: "pane-packaging" */ "./packaging/packaging")).Packaging,
  },
  {
    place: "Package",
    title: "Tasting",
    load: async () => (await import(/* webpackChunkName: "pane-tasting" */ "./tasting/tasting")).Tasting,
  },
  { place: "Season", title: "Season", load: async () => (await import(/* webpackChunkName: "pane-season" */ "./season/season")).Season },
  { place: "Season", title: "Kit", load: async () => (await import(/* webpackChunkName: "pane-kit" */ "./kit/kit")).Kit },
  { place: "Season", title: "Stores", load: async () => (await import(/* webpackChunkName: "pane-stores" */ "./stores/stores")).Stores },
  {
    place: "Share",
    title: "Batch file",
    load: async () => (await import(/* webpackChunkName: "pane-batch-file" */ "./share/batch-file")).BatchFile,
  },
  {
    place: "Share",
    title: "Hand-out",
    load: async () => (await import(/* webpackChunkName: "pane-hand-out" */ "./share/hand-out")).HandOut,
  },
  { place: "Share", title: "Club", load: async () => (await import(/* webpackChunkName: "pane-club" */ "./share/club")).Club },
  {
    place: "Share",
    title: "Blind tasting",
    load: async () => (await import(/* webpackChunkName: "pane-blind-tasting" */ "./share/blind-tasting")).BlindTasting,
  },
  { place: "Share", title: "Unplug", load: async () => (await import(/* webpackChunkName: "pane-unplug" */ "./unplug/unplug")).Unplug },
  {
    place: "Help",
    title: "Explain",
    load: async () => (await import(/* webpackChunkName: "pane-explain" */ "./explain/explain-screen")).ExplainScreen,
  },
  {
    place: "Help",
    title: "Check",
    load: async () => (await import(/* webpackChunkName: "pane-check" */ "./check/check-screen")).CheckScreen,
  },
  {
    place: "Help",
    title: "Functions",
    load: async () => (await import(/* webpackChunkName: "pane-functions" */ "./functions/guide")).FunctionsGuide,
  },
  {
    place: "Help",
    title: "Older sheets",
    load: async () => (await import(/* webpackChunkName: "pane-older-sheets" */ "./older-sheets/older-sheets")).OlderSheets,
  },
];
