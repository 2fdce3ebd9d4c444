import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { DOMParser } from "@xmldom/xmldom";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { functionPage } from "../../src/build/help/function-page";
import { writeHelpPages } from "../../src/build/help-pages";
import { equationLines } from "../../src/functions/equation-lines";
import { formulaText } from "../../src/functions/formula-text";
import { functionsJson, helpPagePath } from "../../src/functions/metadata";
import { places } from "../../src/functions/places";
import { functionNamed, registry } from "../../src/functions/registry";
import { readReferenceTable } from "../support/reference-table";

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(path.join(os.tmpdir(), "gylebook-help-"));
  writeHelpPages(registry, folder);
});
afterAll(() => rmSync(folder, { recursive: true }));

const read = (place: string): string => readFileSync(path.join(folder, place), "utf8");

/** The pages are written so that they are XML as well, which a strict parser can judge. */
function strictlyParsed(html: string): string {
  const xml = html
    .replace("<!doctype html>", "")
    .replaceAll(/<(meta|link)([^>]*)>/g, "<$1$2/>")
    .replaceAll("<br>", "<br/>");
  const complaints: string[] = [];
  const document = new DOMParser({ onError: (_, message) => complaints.push(String(message)) }).parseFromString(xml, "text/xml");
  expect(complaints).toEqual([]);
  return document.documentElement?.textContent ?? "";
}

describe("the help pages", () => {
  it("are one for each function, a list of all, one for the words of the trade, and a style sheet", () => {
    const expected = [...registry.map(({ id }) => helpPagePath(id).replace("help/", "")), "index.html", "words.html", "help.css"];
    expect(readdirSync(path.join(folder, "help")).sort()).toEqual(expected.sort());
  });

  it.each(registry.map((descriptor) => [descriptor.id, descriptor] as const))(
    "tell of %s everything that its description holds",
    (id, descriptor) => {
      const html = read(helpPagePath(id));
      const text = strictlyParsed(html);
      const words = [
        descriptor.summary,
        ...equationLines(descriptor.equation).lines,
        descriptor.result.doc,
        ...(descriptor.cautions ?? []),
        ...descriptor.sources.map(({ cite, where }) => `${cite}: ${where}`),
      ];
      for (const word of words) expect(text).toContain(word);
      for (const example of descriptor.examples) expect(text).toContain(formulaText(descriptor, example));
      for (const key of Object.keys(descriptor.parameters as object))
        expect(text).toContain(key.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`));
      expect(html).not.toMatch(/<script|undefined|NaN|\[object/);
    },
  );

  it("are all reached from the list, place by place", () => {
    const index = read("help/index.html");
    strictlyParsed(index);
    const links = [...index.matchAll(/href="([\w-]+\.html)"/g)].map(([, page]) => `help/${page}`);
    expect(links).toEqual(registry.map(({ id }) => helpPagePath(id)));
    for (const place of Object.keys(places)) expect(index).toContain(`<a href="#${place.toLowerCase()}">`);
    expect([...new Set(registry.map(({ id }) => id.split(".")[0]))]).toEqual(Object.keys(places));
  });

  it("ask for nothing but their own style sheet, our icon and each other", () => {
    for (const page of readdirSync(path.join(folder, "help")).filter((name) => name.endsWith(".html"))) {
      for (const [, target = ""] of read(`help/${page}`).matchAll(/(?:href|src)="([^"]*)"/g))
        expect(target).toMatch(/^(\.\.\/help\/help\.css|\.\.\/assets\/icon-32\.png|[\w-]+\.html(#[a-z]+)?|#[a-z]+)$/);
    }
  });

  it("are where functions.json says", () => {
    for (const { helpUrl = "" } of functionsJson(registry, "https://example.org/beer/").functions) {
      expect(helpUrl).toMatch(/^https:\/\/example\.org\/beer\/help\//);
      expect(read(helpUrl.replace("https://example.org/beer/", ""))).toContain("<h1>");
    }
  });

  it("lose the page of a function that went", () => {
    const old = path.join(folder, "help/old.html");
    writeFileSync(old, "");
    writeHelpPages(registry, folder);
    expect(readdirSync(path.join(folder, "help"))).not.toContain("old.html");
  });
});

describe("the page of a function", () => {
  it("gives unit, range and default in both unit systems", () => {
    const text = strictlyParsed(functionPage(functionNamed("HEAT.WARM")).replaceAll("<br>", " "));
    expect(text).toContain("L or US gal");
    expect(text).toMatch(/°C.*°F/s);
    expect(text).toContain("needed");
  });

  it("shows what the function itself answers, and the figure that it is checked against where that is another", () => {
    const page = strictlyParsed(functionPage(functionNamed("HOPS.UTILISATION")));
    expect(page).toContain("0.17727\nPalmer, How to Brew, Table 7.");
    expect(page).toContain("0.19381\ncompare 0.188: Rager");
    expect(strictlyParsed(functionPage(functionNamed("HEAT.WARM")))).toContain("43.542 min\ncompare 43.75");
  });

  it("of BEER.STYLE lists every style by its name in the guidelines, and marks the codes that are ours", () => {
    const page = strictlyParsed(functionPage(functionNamed("BEER.STYLE")));
    // Read in a copy of the guidelines of 2021 (tests/reference/beer/README.md).
    const read = readReferenceTable("beer/styles.csv").map(({ source }) => source.replace(/^.*vital statistics of /, "").split(" "));
    expect(read).toHaveLength(102);
    for (const [code = "", ...name] of read) expect(page).toMatch(new RegExp(`(?<!\\d)${code}( \\*)?${name.join(" ")}1\\.0`));
    // In the guidelines a code is a number and one capital letter; under 27, Historical Beer, there are names alone (from memory).
    const marked = read.map(([code = ""]) => code).filter((code) => new RegExp(`(?<!\\d)${code} \\*`).test(page));
    expect(marked).toEqual(read.map(([code = ""]) => code).filter((code) => !/^\d+[A-Z]$/.test(code) || code.startsWith("27")));
    expect(marked).toHaveLength(15);
  });

  it("works out a changed example anew", () => {
    const abv = functionNamed("BEER.ABV");
    const page = functionPage({ ...abv, examples: [{ ...abv.examples[0]!, arguments: [1.06, 1.01] }] });
    expect(page).toContain('<p class="answer">6.6');
  });

  it("shows times as a clock does, and dates as dates", () => {
    const page = functionPage(functionNamed("DAY.TIMELINE"));
    expect(page).toContain("<td>9:30</td>");
    expect(page).toContain("<td>2026-04-02 12:15</td>");
    expect(functionPage(functionNamed("PACK.READY"))).toContain("46124, as a date 2026-04-12");
    for (const { id } of registry) expect(functionPage(functionNamed(id))).not.toMatch(/\d{5} date|\d\.\d{9}/);
  });

  it("says what the letters of an equation stand for", () => {
    const page = functionPage(functionNamed("BEER.ABV"));
    for (const letters of ["OE", "AE", "RE", "ABW", "OG", "FG"]) expect(page).toContain(`<dt>${letters}</dt>`);
    expect(functionPage(functionNamed("YEAST.CELLS"))).not.toContain("<dt>P</dt>");
  });

  it("links every other function that it names, and those of the same place", () => {
    for (const descriptor of registry) {
      const page = functionPage(descriptor).replaceAll(/<code>.*?<\/code>/gs, "");
      const named = new Set([...page.matchAll(/GYLE\.([A-Z]+\.[A-Z]+)/g)].map(([, id = ""]) => id).filter((id) => id !== descriptor.id));
      expect(page).not.toContain(`<a href="${helpPagePath(descriptor.id).replace("help/", "")}">`);
      for (const id of named)
        expect(page, `${descriptor.id} names ${id}`).toContain(`<a href="${helpPagePath(id).replace("help/", "")}">GYLE.${id}</a>`);
    }
    expect(functionPage(functionNamed("PACK.PRIMING"))).toContain('<a href="pack-check.html">PACK.CHECK</a>');
  });

  it("does not say its unit twice", () => {
    expect(functionPage(functionNamed("BEER.ABV"))).toContain("<p>Alcohol, % by volume at 20 °C.</p>");
    expect(functionPage(functionNamed("HEAT.CHILL"))).toContain("takes much longer. In min.");
  });

  it("keeps signs of HTML in the words from being read as such", () => {
    const page = functionPage({ ...functionNamed("BEER.ABV"), summary: 'a < b & "c"' });
    expect(page).toContain("a &lt; b &amp; &quot;c&quot;");
  });
});
