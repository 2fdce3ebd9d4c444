import { spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { createServer, type RequestListener } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import path from "node:path";
import { chromium } from "playwright-core";
import { findChromium } from "../find-programs.mjs";

/** Long enough for a slow machine; the page itself notes when something came about. */
const browserStartMs = 4000;
export const patienceMs = 15_000;
const wait = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));
const quiet = ["--disable-background-networking", "--disable-component-update", "--disable-sync", "--no-first-run", "--disable-quic"];

/**
 * Opens the bench for the first time in a browser that is already running, waits, and then asks the page. It is opened without an
 * inspector and asked only afterwards: one that is attached from the beginning makes the browser read the whole bundle again and again.
 *
 * @param files answers for everything under `/`
 * @param ask runs in the page after the wait
 */
export async function askUnwatchedBench<Answer>(files: RequestListener, ask: () => Answer): Promise<Answer | undefined> {
  const executable = findChromium();
  if (executable === undefined) return undefined;
  const server = createServer(files).listen(0, "127.0.0.1");
  await new Promise((resolve) => server.once("listening", resolve));
  const profile = mkdtempSync(path.join(tmpdir(), "gylebook-bench-"));
  const page = `http://127.0.0.1:${(server.address() as AddressInfo).port}/bench/`;
  const control = `http://127.0.0.1:${20_000 + (process.pid % 20_000)}`;
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
    const answer = (await tab?.evaluate(ask as () => unknown)) as Answer | undefined;
    await session.close();
    return answer;
  } finally {
    browser.kill("SIGKILL");
    server.close();
    await wait(500);
    rmSync(profile, { recursive: true, force: true });
  }
}
