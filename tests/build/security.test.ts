import { existsSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { parseManifest, text } from "../../src/build/manifest/document";
import { policies } from "../../src/build/policies.mjs";
import { root } from "../../src/build/run.mjs";

/** What we ship into Excel, looked at as a stranger would. */
const dist = path.join(root, "dist");
if (!existsSync(path.join(dist, "taskpane.js"))) throw new Error("no build to look at: run `npm run build` first");
const read = (file: string) => readFileSync(path.join(dist, file), "utf8");
const scripts = ["functions.js", "taskpane.js", ...readdirSync(path.join(dist, "pane")).filter((name) => name.endsWith(".js")).map((name) => `pane/${name}`)];
const sources = readdirSync(path.join(root, "src"), { recursive: true, encoding: "utf8" }).filter((file) => /\.tsx?$/.test(file) && !file.startsWith("build")).map((file) => ({ file, content: readFileSync(path.join(root, "src", file), "utf8") }));

/** Names by which a browser makes code of text, or speaks to a server. */
const codeOfText = /(?<![\w.$])(?:eval|Function)\(|new Function\b|document\.write|javascript:/;
const speaking = /\b(?:XMLHttpRequest|WebSocket|EventSource|sendBeacon|RTCPeerConnection)\b|(?<![\w.$])fetch\(/;

describe("the scripts that Excel loads", () => {
  it.each(scripts)("%s makes no code of text and speaks to no server", (file) => {
    expect(read(file).length).toBeGreaterThan(100);
    expect(read(file).match(codeOfText)).toBeNull();
    // papaparse can fetch what it is to read; ours is handed text, see below.
    if (!file.includes("readings-file")) expect(read(file).match(speaking)).toBeNull();
  });

  it("hand papaparse text, never an address or a worker", () => {
    const users = sources.filter(({ content }) => content.includes('"papaparse"'));
    expect(users.filter(({ content }) => /\b(?:download|worker)\s*:/.test(content)).map(({ file }) => file)).toEqual([]);
  });

  it("would be found out if they did", () => {
    for (const bad of ['eval("1")', ";Function('return this')()", "new Function('a')", "document.write(x)"]) expect(bad).toMatch(codeOfText);
    for (const bad of ['fetch("https://x")', "new XMLHttpRequest", "navigator.sendBeacon(u)"]) expect(bad).toMatch(speaking);
    for (const good of ["isFunction(x)", "a.eval(1)", "prefetch(x)"]) expect(good).not.toMatch(new RegExp(`${codeOfText.source}|${speaking.source}`));
  });

  it("hold no address but those of the namespaces and of office.js", () => {
    const hosts = new Set(scripts.flatMap((file) => [...read(file).matchAll(/https?:\/\/([\w.-]+)/g)].map(([, host]) => host)));
    // The calendar library names its own page in the product line of a file. Names of vocabularies (XML, SVG, zod's JSON Schema), never asked.
    expect([...hosts].filter((host) => host !== "www.w3.org" && host !== "sebbo2002.github.io" && host !== "json-schema.org")).toEqual([]);
  });
});

describe("our sources", () => {
  it("put no text into a page as HTML", () => {
    expect(sources.length).toBeGreaterThan(200);
    expect(sources.filter(({ content }) => /dangerouslySetInnerHTML|\.innerHTML\s*=|\.outerHTML\s*=|insertAdjacentHTML|DOMParser\(\)\.parseFromString\([^)]*text\/html/.test(content)).map(({ file }) => file)).toEqual([]);
  });

  it("use no dialog, and nothing that an add-in's page is without", () => {
    expect(sources.filter(({ content }) => /(?<![\w.$])(?<![gs]et )(?:alert|confirm|prompt)\(|displayDialogAsync|history\.(?:push|replace)State/.test(content)).map(({ file }) => file)).toEqual([]);
  });
});

describe("what is asked for", () => {
  it("is to read and write the workbook, and the one domain", () => {
    const manifest = parseManifest(readFileSync(path.join(root, "manifest.xml"), "utf8"));
    expect(text(manifest, "Permissions")).toBe("ReadWriteDocument");
    expect([...manifest.getElementsByTagNameNS("*", "AppDomain")].map((domain) => domain.textContent)).toEqual(["https://localhost:3000"]);
  });

  it("is loaded under a policy that every page carries", () => {
    for (const [file, policy] of [["taskpane.html", policies.pane], ["bench/taskpane.html", policies.benchPane], ["help/index.html", policies.reading], ["guide/index.html", policies.reading], ["install.html", policies.reading]] as const) expect(read(file)).toContain(`<meta http-equiv="Content-Security-Policy" content="${policy}">`);
    for (const policy of Object.values(policies)) expect(policy).not.toMatch(/unsafe-eval|script-src[^;]*unsafe|\*/);
  });
});
