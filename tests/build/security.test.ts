import { existsSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { ESLint } from "eslint";
import { describe, expect, it } from "vitest";
import { parseManifest, text } from "../../src/build/manifest/document";
import { policies } from "../../src/build/policies.mjs";
import { root } from "../../src/build/run.mjs";

/** What we ship into Excel, looked at as a stranger would. */
const dist = path.join(root, "dist");
if (!existsSync(path.join(dist, "taskpane.js"))) throw new Error("no build to look at: run `npm run build` first");
const read = (file: string) => readFileSync(path.join(dist, file), "utf8");
const scripts = [
  "functions.js",
  "taskpane.js",
  ...readdirSync(path.join(dist, "pane"))
    .filter((name) => name.endsWith(".js"))
    .map((name) => `pane/${name}`),
];
const sources = readdirSync(path.join(root, "src"), { recursive: true, encoding: "utf8" })
  .filter((file) => /\.tsx?$/.test(file) && !file.startsWith("build"))
  .map((file) => ({ file, content: readFileSync(path.join(root, "src", file), "utf8") }));

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
    for (const bad of ['eval("1")', ";Function('return this')()", "new Function('a')", "document.write(x)"])
      expect(bad).toMatch(codeOfText);
    for (const bad of ['fetch("https://x")', "new XMLHttpRequest", "navigator.sendBeacon(u)"]) expect(bad).toMatch(speaking);
    for (const good of ["isFunction(x)", "a.eval(1)", "prefetch(x)"])
      expect(good).not.toMatch(new RegExp(`${codeOfText.source}|${speaking.source}`));
  });

  it("hold no address but the names of vocabularies, which nobody asks for, and what a library says in its errors", () => {
    const addresses = scripts.flatMap((file) =>
      [...read(file).matchAll(/(?<before>.{0,12})(?<address>https?:\/\/[\w./#-]+)/g)].map(({ groups }) => ({
        file,
        before: groups?.["before"] ?? "",
        address: groups?.["address"] ?? "",
      })),
    );
    expect(addresses.length).toBeGreaterThan(3);
    const harmless = addresses.filter(
      ({ file, before, address }) =>
        // XML, SVG and XHTML.
        address.startsWith("http://www.w3.org/") ||
        // zod's dialects of JSON Schema.
        (before.endsWith('$schema="') && /^https?:\/\/json-schema\.org\/draft/.test(address)) ||
        // ical-generator's messages for programmers, in the one screen that uses it; the files that it writes name us (tests/workbook/calendar.test.ts).
        (file.startsWith("pane/pane-calendar.") &&
          before.endsWith(" See ") &&
          address.startsWith("https://sebbo2002.github.io/ical-generator/")),
    );
    expect(addresses.filter((one) => !harmless.includes(one))).toEqual([]);
  });
});

describe("our sources", () => {
  const lint = new ESLint({ cwd: root });
  /** The first text makes the linter read all types: most of a minute on a busy machine. */
  const linterStarts = 300_000;
  const messages = async (code: string): Promise<string[]> => {
    const [result] = await lint.lintText(code, { filePath: path.join(root, "src/pane/pane.tsx") });
    return result?.messages.map(({ ruleId }) => ruleId ?? "") ?? [];
  };

  // Text of a workbook or a file reaches a page as text: held by the linter, which `npm test` runs over everything.
  it.each([
    "document.body.innerHTML = name;",
    "document.body.outerHTML += name;",
    "document.body.insertAdjacentHTML('beforeend', name);",
    "document.write(name);",
    "export const a = <p dangerouslySetInnerHTML={{ __html: name }} />;",
    "export const a = <iframe srcdoc={name} />;",
    "h('p', { dangerouslySetInnerHTML: { __html: name } });",
    "eval(name);",
    "new Function(name)();",
    "setTimeout('name()', 1);",
    'location.href = "javascript:name()";',
  ])(
    "the linter refuses %s",
    async (code) => {
      expect(await messages(code)).toEqual(
        expect.arrayContaining([
          expect.stringMatching(
            /^(no-restricted-syntax|no-eval|no-new-func|no-implied-eval|no-script-url|@typescript-eslint\/no-implied-eval)$/,
          ),
        ]),
      );
    },
    linterStarts,
  );

  // Only a linter sees all calls: on the bench hardly anybody is found typing at the wrong moment.
  it.each([
    ["Excel.run(async (context) => context.sync());", true],
    ["Excel.run({ mergeUndoGroup: true }, async (context) => context.sync());", true],
    ["Excel.run({ delayForCellEdit: true }, async (context) => context.sync());", false],
  ])(
    "wait for somebody who is typing in a cell: the linter looks at %s",
    async (code, isRefused) => {
      expect((await messages(`void ${code}`)).includes("no-restricted-syntax")).toBe(isRefused);
    },
    linterStarts,
  );

  it("make no exception from that, but for the headless bench, which runs our own functions.js in Node", () => {
    expect(sources.length).toBeGreaterThan(200);
    const exceptions = sources
      .filter(({ content }) =>
        /eslint-disable[^\n]*(?:no-restricted-syntax|no-eval|no-new-func|no-implied-eval|no-script-url)/.test(content),
      )
      .map(({ file }) => file);
    expect(exceptions).toEqual([path.join("excel-stand-in", "headless.ts")]);
    expect(sources.filter(({ content }) => /parseFromString\([^)]*text\/html/.test(content)).map(({ file }) => file)).toEqual([]);
  });

  it("use no dialog, and nothing that an add-in's page is without", () => {
    expect(
      sources
        .filter(({ content }) =>
          /(?<![\w.$])(?<![gs]et )(?:alert|confirm|prompt)\(|displayDialogAsync|history\.(?:push|replace)State/.test(content),
        )
        .map(({ file }) => file),
    ).toEqual([]);
  });
});

describe("what is asked for", () => {
  it("is to read and write the workbook, and the one domain", () => {
    const manifest = parseManifest(readFileSync(path.join(root, "manifest.xml"), "utf8"));
    expect(text(manifest, "Permissions")).toBe("ReadWriteDocument");
    expect([...manifest.getElementsByTagNameNS("*", "AppDomain")].map((domain) => domain.textContent)).toEqual(["https://localhost:3000"]);
  });

  it("is loaded under a policy that every page carries", () => {
    for (const [file, policy] of [
      ["taskpane.html", policies.pane],
      ["bench/taskpane.html", policies.benchPane],
      ["help/index.html", policies.reading],
      ["guide/index.html", policies.reading],
      ["install.html", policies.reading],
    ] as const)
      expect(read(file)).toContain(`<meta http-equiv="Content-Security-Policy" content="${policy}">`);
    // office.js asks in a frame beside itself whether the page around the pane may be trusted; on the bench it is not there.
    const frames = (policy: string) => /frame-src ([^;]*)/.exec(policy)?.[1];
    expect([policies.pane, policies.benchPane, policies.reading].map(frames)).toEqual([
      "https://appsforoffice.microsoft.com",
      undefined,
      undefined,
    ]);
    for (const policy of Object.values(policies)) expect(policy).not.toMatch(/unsafe-eval|script-src[^;]*unsafe|\*/);
  });
});
