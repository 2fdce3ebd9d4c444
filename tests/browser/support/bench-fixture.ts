import type { Browser, BrowserContext } from "playwright-core";
import { afterAll, afterEach, beforeAll, expect } from "vitest";
import { BenchPage, watch, type Misdeeds } from "./bench-page";
import { serveBuiltSite, type BuiltSite } from "./built-site";
import { launchChromium } from "./chromium";

export interface BenchFixture {
  /** A browser profile of its own: nothing is kept in it yet. The next `open` in the same test shares it. */
  open(query?: string): Promise<BenchPage>;
  readonly context: BrowserContext;
  /** For a test that provokes errors on purpose. */
  allowErrors(): void;
}

/** One server and one browser for a test file; a fresh profile for each test, and a look at what its pages asked for. */
export function useBench(): BenchFixture {
  let site: BuiltSite;
  let browser: Browser;
  let context: BrowserContext | undefined;
  let misdeeds: Misdeeds | undefined;
  let errorsAllowed = false;

  beforeAll(async () => {
    site = await serveBuiltSite();
    browser = await launchChromium();
  });
  afterAll(async () => {
    await browser?.close();
    await site?.close();
  });
  afterEach(async () => {
    await context?.close();
    context = undefined;
    const seen = misdeeds;
    const allowed = errorsAllowed;
    misdeeds = undefined;
    errorsAllowed = false;
    expect(seen?.foreignRequests ?? []).toEqual([]);
    if (!allowed) expect(seen?.errors ?? []).toEqual([]);
  });

  return {
    open: async (query) => {
      if (context === undefined) {
        context = await browser.newContext({ viewport: { width: 1400, height: 900 } });
        misdeeds = watch(context, site.origin);
      }
      return BenchPage.open(context, site.origin, query);
    },
    get context() { return context!; },
    allowErrors: () => { errorsAllowed = true; },
  };
}
