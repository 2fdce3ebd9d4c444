import type { BrowserContext } from "playwright-core";
import { afterAll, afterEach, beforeAll, expect } from "vitest";
import { BenchPage, watch, type Misdeeds } from "./bench-page";
import { serveBuiltSite, type BuiltSite } from "./built-site";
import { useChromium } from "./chromium";

/** Generous: a busy machine takes many times as long to start the grid. */
const patienceMs = 100_000;

export interface BenchFixture {
  /** Opens the bench in a tab of the present profile; the first tab of a profile finds nothing kept. */
  open(query?: string): Promise<BenchPage>;
  /** The tab that was opened last, with an empty workbook and a pane of its own: starting a page takes longer than most tests. */
  emptied(): Promise<BenchPage>;
  readonly context: BrowserContext;
  /** For a test that provokes errors on purpose. */
  allowErrors(): void;
}

export interface BenchFixtureOptions {
  /** A fresh browser profile for each test, or one for the whole file (starting the grid is what takes the time). */
  profile: "each test" | "whole file";
  /** The browser's language, by which forms start in one unit system or the other. */
  locale?: string;
  /** Where the browser's clock hangs; this computer's zone otherwise. */
  timezoneId?: string;
  /** A small grid by default: drawing it is half of what a page does, and most tests look at the pane. */
  viewport?: { readonly width: number; readonly height: number };
}

/** As high as the pane needs for a picture, the grid beside it no wider than a batch sheet's first columns. */
export const smallGrid = { width: 900, height: 900 } as const;
/** For tests of the grid's own looks. */
export const wideGrid = { width: 1400, height: 900 } as const;

/** A server and a browser for a test file, and after each test a look at what its pages asked for. */
export function useBench({ profile, locale = "en-GB", timezoneId, viewport = smallGrid }: BenchFixtureOptions): BenchFixture {
  let site: BuiltSite;
  const chromium = useChromium();
  let context: BrowserContext | undefined;
  let misdeeds: Misdeeds = { foreignRequests: [], errors: [] };
  let errorsAllowed = false;
  let last: BenchPage | undefined;

  beforeAll(async () => {
    site = await serveBuiltSite();
  });
  afterAll(() => site?.close());
  afterEach(async () => {
    if (profile === "each test") {
      await context?.close();
      context = last = undefined;
    }
    const foreignRequests = misdeeds.foreignRequests.splice(0);
    const errors = misdeeds.errors.splice(0);
    const allowed = errorsAllowed;
    errorsAllowed = false;
    expect(foreignRequests.join("\n")).toBe("");
    if (!allowed) expect(errors.join("\n")).toBe("");
  });

  const open: BenchFixture["open"] = async (query) => {
    if (context === undefined) {
      context = await chromium.browser.newContext({ viewport, locale, ...(timezoneId === undefined ? {} : { timezoneId }) });
      context.setDefaultTimeout(patienceMs);
      misdeeds = watch(context, site.origin);
    }
    return (last = await BenchPage.open(context, site.origin, query));
  };

  return {
    open,
    emptied: async () => {
      const tab = last ?? (await open());
      await tab.startEmpty();
      return tab;
    },
    get context() {
      return context!;
    },
    allowErrors: () => {
      errorsAllowed = true;
    },
  };
}
