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

/** Long enough for a slow machine; the page itself notes when its grid stood there. */
const patienceMs = 20_000;
const limitMs = 2000;

/**
 * From navigation to the first drawn grid, with the sample batch on it. The browser starts the page by itself and is
 * asked only afterwards: an inspector that is attached from the beginning makes it read the whole bundle again and again.
 */
export const firstGrid: BenchRow = {
  what: "bench: first usable grid after navigation, sample batch on it",
  target: `under ${limitMs / 1000} s on two cores`,
  measure: async () => {
    const executable = findChromium();
    if (executable === undefined) return { measured: "no Chromium found", met: false };
    const server = createServer(sirv(path.join(root, "dist"), { dev: true })).listen(0, "127.0.0.1");
    await new Promise((resolve) => server.once("listening", resolve));
    const profile = mkdtempSync(path.join(tmpdir(), "gylebook-bench-"));
    const page = `http://127.0.0.1:${(server.address() as AddressInfo).port}/bench/`;
    const quiet = ["--disable-background-networking", "--disable-component-update", "--disable-sync", "--no-first-run", "--disable-quic"];
    const port = 20_000 + (process.pid % 20_000);
    const browser = spawn(executable, ["--headless", "--no-sandbox", "--disable-gpu", ...quiet, `--user-data-dir=${profile}`, `--remote-debugging-port=${port}`, page], { stdio: "ignore" });
    try {
      await new Promise((resolve) => setTimeout(resolve, patienceMs));
      const session = await chromium.connectOverCDP(`http://127.0.0.1:${port}`);
      const marks = await session.contexts()[0]?.pages()[0]?.evaluate(() => performance.getEntriesByName("bench-grid").map(({ startTime }) => startTime));
      await session.close();
      const ms = marks?.[0];
      return { measured: ms === undefined ? `not within ${patienceMs / 1000} s` : `${(ms / 1000).toFixed(2)} s`, met: ms !== undefined && ms < limitMs };
    } finally {
      browser.kill("SIGKILL");
      server.close();
      await new Promise((resolve) => setTimeout(resolve, 500));
      rmSync(profile, { recursive: true, force: true });
    }
  },
};
