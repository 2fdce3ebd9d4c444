import type { AddressInfo } from "node:net";
import path from "node:path";
import { chromium, type Browser, type Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { findChromium } from "../../src/build/find-programs.mjs";
import { root } from "../../src/build/run.mjs";
import { fileServer } from "../../src/build/serve.mjs";
import { registry } from "../../src/functions/registry";

/**
 * The page that Excel loads, in a browser without Excel. Microsoft's office.js never comes from the network here: each
 * test says what is to stand in its place.
 */
const officeJs = "https://appsforoffice.microsoft.com/lib/1/hosted/office.js";

/** Notes what is registered, and answers as office.js does in a plain browser: there, but without a host. */
const withoutHost = `
  window.registered = [];
  window.CustomFunctions = { associate: (first) => window.registered.push(...(typeof first === "string" ? [first] : Object.keys(first))), Error: class {} };
  window.Office = { onReady: async () => { window.registeredWhenAsked = window.registered.length; return { host: null, platform: null }; } };
`;

let browser: Browser;
let address: string;
let page: Page;
const server = await fileServer(path.join(root, "dist"));

beforeAll(async () => {
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  address = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
  browser = await chromium.launch({
    ...launchOptions(),
    args: ["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-component-update", "--disable-sync", "--no-first-run", "--disable-quic"],
  });
});
afterEach(() => page.close());
afterAll(async () => {
  await browser.close();
  server.close();
});

function launchOptions(): { executablePath: string } {
  const executablePath = findChromium();
  if (executablePath === undefined) throw new Error("no browser found: see src/build/find-programs.mjs");
  return { executablePath };
}

/** Opens the page with `script` for office.js, or with no network at all; returns the addresses that were asked for. */
async function open(script: string | undefined): Promise<string[]> {
  page = await browser.newPage();
  const asked: string[] = [];
  page.on("request", (request) => asked.push(request.url()));
  await page.route(
    (url) => !url.href.startsWith(address),
    (route) => (script !== undefined && route.request().url() === officeJs ? route.fulfill({ contentType: "text/javascript", body: script }) : route.abort()),
  );
  await page.goto(`${address}taskpane.html`);
  return asked;
}

describe("the task pane's page", () => {
  it("says in words that there is no workbook beside it", async () => {
    await open(withoutHost);
    expect(await page.getByRole("status").textContent()).toContain("It works inside Excel, or on the bench");
  });

  it("says so too when office.js cannot be fetched", async () => {
    await open(undefined);
    expect(await page.getByRole("status").textContent()).toContain("there is no workbook beside it");
  });

  it("has every function registered before the pane asks the host for anything", async () => {
    await open(withoutHost);
    await page.getByRole("status").waitFor();
    expect(await page.evaluate("window.registeredWhenAsked")).toBe(registry.length);
    expect(await page.evaluate("window.registered")).toEqual(registry.map(({ id }) => id));
  });

  it("asks for its own files and Microsoft's office.js, nothing else", async () => {
    const asked = await open(withoutHost);
    await page.getByRole("status").waitFor();
    expect(asked.filter((url) => !url.startsWith(address))).toEqual([officeJs]);
  });
});
