import { spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import path from "node:path";
import { chromium } from "playwright-core";
import sirv from "sirv";
import { findChromium } from "../find-programs.mjs";
import { root } from "../run.mjs";
import type { BenchRow } from "./row";

const limitMs = 2000;
/** Long enough for a slow machine; the page itself notes when its grid stood there. */
const browserStartMs = 4000;
const patienceMs = 15_000;
const wait = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

/**
 * From navigation to the first drawn grid in a browser that is already running, with the sample batch on it. The page
 * is opened without an inspector and asked only afterwards: one that is attached from the beginning makes the browser
 * read the whole bundle again and again.
 */
export const firstGrid: BenchRow = {
  what: "bench: first usable grid after navigation, sample batch on it",
  target: `under ${limitMs / 1000} s on two cores`,
  measure: async () => {
    const executable = findChromium();
    if (executable === undefined) return { measured: "no Chromium found" };
    const server = createServer(sirv(path.join(root, "dist"), { dev: true })).listen(0, "127.0.0.1");
    await new Promise((resolve) => server.once("listening", resolve));
    const profile = mkdtempSync(path.join(tmpdir(), "gylebook-bench-"));
    const page = `http://127.0.0.1:${(server.address() as AddressInfo).port}/bench/`;
    const control = `http://127.0.0.1:${20_000 + (process.pid % 20_000)}`;
    const quiet = ["--disable-background-networking", "--disable-component-update", "--disable-sync", "--no-first-run", "--disable-quic"];
    const browser = spawn(
      executable,
      [
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        ...quiet,
        `--user-data-dir=${profile}`,
        `--remote-debugging-port=${new URL(control).port}`,
        "about:blank",
      ],
      { stdio: "ignore" },
    );
    try {
      await wait(browserStartMs);
      await fetch(`${control}/json/new?${encodeURIComponent(page)}`, { method: "PUT" });
      await wait(patienceMs);
      const session = await chromium.connectOverCDP(control);
      const tab = session
        .contexts()[0]
        ?.pages()
        .find((candidate) => candidate.url() === page);
      const ms = await tab?.evaluate(() => performance.getEntriesByName("bench-grid")[0]?.startTime);
      await session.close();
      return {
        measured: ms === undefined ? `not within ${patienceMs / 1000} s` : `${(ms / 1000).toFixed(2)} s`,
        met: ms !== undefined && ms < limitMs,
      };
    } finally {
      browser.kill("SIGKILL");
      server.close();
      await wait(500);
      rmSync(profile, { recursive: true, force: true });
    }
  },
};
