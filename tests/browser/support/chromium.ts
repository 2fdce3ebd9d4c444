import { chromium, type Browser } from "playwright-core";
import { afterAll, beforeAll } from "vitest";
import { findChromium } from "../../../src/build/find-programs.mjs";

/** Chromium without its own errands on the network, so that every request seen is the page's. */
const quiet = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--no-first-run",
  "--disable-quic",
];

/** One browser for all files that a process runs, one after the other; it ends with the process. */
let running: Promise<Browser> | undefined;

async function launch(): Promise<Browser> {
  const executablePath = findChromium();
  if (executablePath === undefined) throw new Error("No Chromium was found: install one, or name it in GYLEBOOK_CHROMIUM.");
  const browser = await chromium.launch({ executablePath, args: quiet });
  browser.on("disconnected", () => (running = undefined));
  return browser;
}

/** The browser for a test file. Each of its contexts is a profile of its own; none is left open behind the file. */
export function useChromium(): { readonly browser: Browser } {
  let browser: Browser | undefined;
  beforeAll(async () => {
    browser = await (running ??= launch());
  });
  afterAll(async () => {
    for (const context of browser?.contexts() ?? []) await context.close();
  });
  return {
    get browser() {
      if (browser === undefined) throw new Error("the browser starts with the file's first test");
      return browser;
    },
  };
}
