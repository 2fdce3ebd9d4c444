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
  readonly context: BrowserContext;
  /** For a test that provokes errors on purpose. */
  allowErrors(): void;
}

export interface BenchFixtureOptions {
  /** A fresh browser profile for each test, or one for the whole file (starting the grid is what takes the time). */
  profile: "each test" | "whole file";
  /** The browser's language, by which forms start in one unit system or the other. */
  locale?: string;
}

/** A server and a browser for a test file, and after each test a look at what its pages asked for. */
export function useBench({ profile, locale = "en-GB" }: BenchFixtureOptions): BenchFixture {
  let site: BuiltSite;
  const chromium = useChromium();
  let context: BrowserContext | undefined;
  let misdeeds: Misdeeds = { foreignRequests: [], errors: [] };
  let errorsAllowed = false;

  beforeAll(async () => {
    site = await serveBuiltSite();
  });
  afterAll(() => site?.close());
  afterEach(async () => {
    if (profile === "each test") {
      await context?.close();
      context = undefined;
    }
    const foreignRequests = misdeeds.foreignRequests.splice(0);
    const errors = misdeeds.errors.splice(0);
    const allowed = errorsAllowed;
    errorsAllowed = false;
    expect(foreignRequests.join("\n")).toBe("");
    if (!allowed) expect(errors.join("\n")).toBe("");
  });

  return {
    open: async (query) => {
      if (context === undefined) {
        context = await chromium.browser.newContext({ viewport: { width: 1400, height: 900 }, locale });
        context.setDefaultTimeout(patienceMs);
        misdeeds = watch(context, site.origin);
      }
      return BenchPage.open(context, site.origin, query);
    },
    get context() {
      return context!;
    },
    allowErrors: () => {
      errorsAllowed = true;
    },
  };
}
