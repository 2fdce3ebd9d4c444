import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { manifestFor } from "../../src/build/addin-files";
import { drawIcon } from "../../src/build/draw-icons";
import { builtSite, type Site } from "../../src/build/manifest/site";
import { associatedIds } from "../../src/build/manifest/site-checks";
import { root } from "../../src/build/run.mjs";
import { validateManifest } from "../../src/build/validate-manifest";
import { registry } from "../../src/functions/registry";

const manifest = readFileSync(path.join(root, "manifest.xml"), "utf8");
let site: Site;

beforeAll(() => {
  if (!existsSync(path.join(root, "dist/functions.js"))) throw new Error("no build to check against: run `npm run build` first");
  site = builtSite(root);
});

/** The manifest with one thing changed; fails when there was nothing to change, so that no case tests the good one. */
function changed(from: string | RegExp, to: string): string {
  const other = manifest.replace(from, to);
  if (other === manifest) throw new Error(`nothing in the manifest matches ${String(from)}`);
  return other;
}

describe("the manifest", () => {
  it("has nothing wrong with it", () => {
    expect(validateManifest(manifest, site)).toEqual([]);
  });

  it("has nothing wrong with it when made for another address, with or without a folder", () => {
    for (const base of ["https://quillmarsh.example/", "https://quillmarsh.example/tools/gyle/"]) {
      const moved = manifestFor(base, manifest);
      expect(validateManifest(moved, site)).toEqual([]);
      expect(moved).not.toContain("localhost");
      expect(moved).toContain(`"${base}functions.json"`);
    }
  });
});

const brokenManifests: [what: string, xml: () => string, complaint: RegExp][] = [
  ["is not XML", () => manifest.slice(0, -20), /not well-formed XML/],
  ["has a malformed id", () => changed(/<Id>.*<\/Id>/, "<Id>gylebook</Id>"), /is not a GUID/],
  ["has another version than the package", () => changed("<Version>", "<Version>9"), /in four parts/],
  ["has a version in three parts", () => changed(/\.0<\/Version>/, "</Version>"), /in four parts/],
  [
    "has its elements in another order",
    () => changed(/(<ProviderName>.*<\/ProviderName>)\s*(<DefaultLocale>.*<\/DefaultLocale>)/, "$2$1"),
    /top elements/,
  ],
  [
    "does not begin its host with the runtime",
    () => changed(/(<Runtimes>[\s\S]*<\/Runtimes>)([\s\S]*)(<\/Host>)/, "$2$1$3"),
    /Runtimes must be the first/,
  ],
  ["does not ask for the shared runtime", () => changed(/<Set Name="SharedRuntime".*\/>/, ""), /SharedRuntime 1\.1 is missing/],
  [
    "asks for an older functions runtime",
    () => changed('CustomFunctionsRuntime" MinVersion="1.3"', 'CustomFunctionsRuntime" MinVersion="1.1"'),
    /CustomFunctionsRuntime 1\.3 is missing/,
  ],
  [
    "has a TaskpaneId",
    () => changed('<Action xsi:type="ShowTaskpane">', '<Action xsi:type="ShowTaskpane"><TaskpaneId>One</TaskpaneId>'),
    /TaskpaneId/,
  ],
  ["has an id that is too long", () => manifest.replaceAll('"Open.Label"', `"${"Open".repeat(9)}"`), /longer than 32/],
  ["has a label that is too long", () => changed('DefaultValue="Brewing"', `DefaultValue="${"Brewing ".repeat(16)}"`), /125 characters/],
  [
    "has a tip that is too long",
    () => changed('DefaultValue="Opens the pane', `DefaultValue="${"Opens ".repeat(43)}the pane`),
    /250 characters/,
  ],
  ["refers to a resource that is not there", () => changed('resid="Group.Label"', 'resid="Group.Lable"'), /"Group\.Lable" is not among/],
  [
    "loads something without https",
    () => changed('"https://localhost:3000/functions.js"', '"http://localhost:3000/functions.js"'),
    /is not https/,
  ],
  ["trusts a domain without https", () => changed("<AppDomain>https:", "<AppDomain>http:"), /is not https/],
  [
    "has a runtime page that is not the pane's",
    () => changed('<Runtime resid="Pane.Url"', '<Runtime resid="Functions.Script.Url"'),
    /one page must serve all/,
  ],
  [
    "has a functions page that is not the pane's",
    () => changed(/<Page>\s*<SourceLocation resid="Pane.Url"/, '<Page><SourceLocation resid="Functions.Script.Url"'),
    /one page must serve all/,
  ],
  [
    "has a command page that is not the pane's",
    () => changed('<FunctionFile resid="Pane.Url"', '<FunctionFile resid="Functions.Script.Url"'),
    /one page must serve all/,
  ],
  [
    "has an action that opens another page",
    () => changed(/(<Action.*>\s*<SourceLocation resid=)"Pane.Url"/, '$1"Functions.Script.Url"'),
    /one page must serve all/,
  ],
  ["names a file that is not built", () => changed("3000/functions.json", "3000/function.json"), /there is no file for .*function\.json/],
  ["names an icon that is not built", () => changed("icon-40.png", "icon-41.png"), /no icon file for .*icon-41\.png/],
  ["gives an icon of another size", () => changed("icon-80.png", "icon-64.png"), /is 64 x 64 px, not 80 x 80/],
  ["leaves out a size between", () => changed(/<bt:Image size="20".*\/>/, ""), /icon of 20 px is missing/],
  ["asks for more than the workbook", () => changed("ReadWriteDocument", "ReadWriteMailbox"), /Permissions "ReadWriteMailbox"/],
  [
    "trusts another domain",
    () => changed("</AppDomains>", "<AppDomain>https://elsewhere.example</AppDomain></AppDomains>"),
    /elsewhere\.example is not where the add-in comes from/,
  ],
  ["leaves out a ribbon size", () => manifest.replaceAll(/<bt:Image size="80".*\/>/g, ""), /icon of 80 px is missing/],
];

describe("a manifest that", () => {
  it.each(brokenManifests)("%s is refused", (_, xml, complaint) => {
    expect(validateManifest(xml(), site).join("\n")).toMatch(complaint);
  });
});

describe("the built files", () => {
  const withFile = (name: string, content: string | Buffer): Site => ({
    ...site,
    file: (place) => (place === name ? Buffer.from(content) : site.file(place)),
  });
  const register = (...ids: string[]): string => `CustomFunctions.associate({${ids.map((id) => `"${id}"() {}`).join(",")}})`;
  const allIds = registry.map(({ id }) => id);

  it("register every function of the registry and no other", () => {
    expect(associatedIds(site.file("functions.js")!.toString()).sort()).toEqual([...allIds].sort());
  });

  it("are refused when a described function is not registered", () => {
    expect(validateManifest(manifest, withFile("functions.js", register(...allIds.slice(1))))).toEqual([
      `${allIds[0]} is in functions.json but functions.js does not register it`,
    ]);
  });

  it("are refused when a registered function is not described", () => {
    expect(
      validateManifest(manifest, withFile("functions.js", `${register(...allIds)};CustomFunctions.associate("EXTRA", () => 1)`)),
    ).toEqual(["EXTRA is registered by functions.js but is not in functions.json"]);
  });

  it("are refused when an icon is not a PNG, or of another size than its name says", () => {
    expect(validateManifest(manifest, withFile("assets/icon-16.png", "not a picture")).join()).toMatch(/icon-16\.png is not a PNG/);
    expect(validateManifest(manifest, withFile("assets/icon-16.png", drawIcon(20))).join()).toMatch(/is 20 x 20 px, not 16 x 16/);
  });
});
