import { chromium, type Browser } from "playwright-core";
import { findChromium } from "../../../src/build/find-programs.mjs";

/** Chromium without its own errands on the network, so that every request seen is the page's. */
const quiet = [
  "--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-component-update", "--disable-sync",
  "--no-first-run", "--disable-quic",
];

export async function launchChromium(): Promise<Browser> {
  const executablePath = findChromium();
  if (executablePath === undefined) throw new Error("No Chromium was found: install one, or name it in GYLEBOOK_CHROMIUM.");
  return chromium.launch({ executablePath, args: quiet });
}
