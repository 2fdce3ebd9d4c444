import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { root } from "../../src/build/run.mjs";
import { headerRules } from "../../src/build/site/headers";
import { makeSite } from "../../src/build/site/make-site";
import { validateManifest } from "../../src/build/validate-manifest";

const base = "https://club.example/gylebook/";
let site: string;
beforeAll(() => {
  if (!existsSync(path.join(root, "dist/bench/index.html"))) throw new Error("no build to make a site of: run `npm run build` first");
  site = mkdtempSync(path.join(os.tmpdir(), "gylebook-site-"));
  makeSite(base, path.join(root, "dist"), site);
});
afterAll(() => rmSync(site, { recursive: true, force: true }));

const read = (place: string): string => readFileSync(path.join(site, place), "utf8");
const allFiles = (): string[] =>
  readdirSync(site, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => path.relative(site, path.join(entry.parentPath, entry.name)).split(path.sep).join("/"));

describe("the folder to upload", () => {
  it("has a manifest in order, with every address under the base and its file behind it", () => {
    const { version } = JSON.parse(readFileSync(path.join(root, "package.json"), "utf8")) as { version: string };
    const file = (place: string) => (existsSync(path.join(site, place)) ? readFileSync(path.join(site, place)) : undefined);
    expect(validateManifest(read("manifest.xml"), { version, file })).toEqual([]);
    const addresses = [...read("manifest.xml").matchAll(/https:\/\/[^"<]+/g)]
      .map(([address]) => address)
      .filter((address) => !address.includes("schemas.microsoft.com"));
    expect(addresses.length).toBeGreaterThan(12);
    expect(addresses.filter((address) => !address.startsWith(base) && address !== "https://club.example")).toEqual([]);
  });

  it("names the developer's computer nowhere", () => {
    expect(allFiles().filter((file) => /\.(html|xml|json|txt)$|_headers$/.test(file) && read(file).includes("localhost"))).toEqual([]);
  });

  it("links every function to its page under the base", () => {
    const { functions } = JSON.parse(read("functions.json")) as { functions: { helpUrl: string }[] };
    expect(
      functions
        .map(({ helpUrl }) => helpUrl)
        .filter((url) => !url.startsWith(`${base}help/`) || !existsSync(path.join(site, url.slice(base.length)))),
    ).toEqual([]);
  });

  it("has no page with a link or a file to load that is not there", () => {
    const missing = allFiles()
      .filter((file) => file.endsWith(".html"))
      .flatMap((page) =>
        [...read(page).matchAll(/(?:href|src)="([^"]+)"/g)]
          .map(([, target]) => target ?? "")
          .filter((target) => !target.startsWith("https://appsforoffice.microsoft.com/"))
          .flatMap((target) => {
            const file = path.posix.join(path.posix.dirname(page), target.replace(/#.*$/, "")).replace(/\/$/, "/index.html");
            return existsSync(path.join(site, file.endsWith("/index.html") || path.extname(file) !== "" ? file : `${file}/index.html`))
              ? []
              : [`${page}: ${target}`];
          }),
      );
    expect(missing).toEqual([]);
  });

  it("gives every script and style of the pane and the bench a name that follows from its content", () => {
    for (const page of ["taskpane.html", "bench/index.html", "bench/taskpane.html"]) {
      const loaded = [...read(page).matchAll(/(?:script[^>]* src|rel="stylesheet" href|link href)="([^":]+\.(?:js|css))"/g)].map(
        ([, file]) => file ?? "",
      );
      expect(loaded.length).toBeGreaterThan(1);
      for (const file of loaded) expect(file).toMatch(/\.[0-9a-f]{10}\.(js|css)$/);
    }
    expect(read("taskpane.html")).toContain('src="https://appsforoffice.microsoft.com/lib/1/hosted/office.js"');
    expect(existsSync(path.join(site, "taskpane.js"))).toBe(false);
    // The manifest and the bench know this one by its plain name.
    expect(existsSync(path.join(site, "functions.js"))).toBe(true);
  });
});

describe("what the server is told", () => {
  const rulesFor = (file: string) =>
    headerRules(site).filter(({ place }) => place === file || (place.endsWith("*") && file.startsWith(place.slice(0, -1))));

  it("covers each file once, except the samples and the note itself", () => {
    const uncovered = allFiles().filter((file) => rulesFor(file).length !== 1);
    expect(uncovered.filter((file) => !file.endsWith(".xlsx")).sort()).toEqual(["HEADERS.txt", "_headers"]);
  });

  it("lets a browser keep for ever exactly what has a hash in its name", () => {
    for (const file of allFiles()) {
      const cache = rulesFor(file)[0]?.headers["Cache-Control"];
      if (cache !== undefined) expect([file, cache.includes("immutable")]).toEqual([file, /\.[0-9a-f]{10}\.(js|css)$/.test(file)]);
    }
  });

  it("lets Excel on the web read functions.json from its own address, and nothing else", () => {
    expect(
      headerRules(site)
        .filter(({ headers }) => "Access-Control-Allow-Origin" in headers)
        .map(({ place }) => place),
    ).toEqual(["functions.json"]);
  });

  it("is the page's own policy, without eval and without any third party but Microsoft's office.js", () => {
    for (const { place, headers } of headerRules(site).filter(({ place }) => place.endsWith(".html"))) {
      const policy = headers["Content-Security-Policy"] ?? "";
      expect(read(place)).toContain(`content="${policy.replace("; frame-ancestors 'self'", "")}"`);
      expect(policy).toMatch(/^default-src 'none'; /);
      expect(policy).not.toMatch(/unsafe-eval|script-src[^;]*unsafe|\*/);
      expect((policy.match(/https?:[^ ;]+/g) ?? []).filter((host) => host !== "https://appsforoffice.microsoft.com")).toEqual([]);
    }
  });

  it("stands in _headers with the folder's own path, within what hosts take", () => {
    const lines = read("_headers").split("\n");
    const paths = lines.filter((line) => line.startsWith("/"));
    expect(paths).toContain("/gylebook/taskpane.html");
    expect(paths.filter((line) => !line.startsWith("/gylebook/"))).toEqual([]);
    expect(paths.length).toBeLessThanOrEqual(100);
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThan(2000);
  });
});
