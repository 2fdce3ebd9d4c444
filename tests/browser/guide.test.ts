import { existsSync, mkdirSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { PNG } from "pngjs";
import { beforeAll, beforeEach, expect, test } from "vitest";
import { guidePages } from "../../src/build/guide/pages";
import { pictures, type PictureName } from "../../src/build/guide/pictures";
import { root } from "../../src/build/run.mjs";
import type { BenchPage } from "./support/bench-page";
import { useBench, wideGrid } from "./support/bench-fixture";
import { findingsIn } from "./support/axe";
import { guideSteps, readmeStep } from "./support/guide-steps";
import { layoutFaults, widths } from "./support/layout";

/**
 * Walks the steps of every picture of the guide. `npm run guide` keeps what is seen as the guide's pictures; the tests only hold that
 * every step can still be gone, and that the committed pictures are there and of that size.
 */
const committed = path.join(root, "src/build/guide/pictures");
const keep = process.env["GYLEBOOK_GUIDE"] === "keep";
const folder = keep ? committed : path.join(root, ".cache/guide");
mkdirSync(folder, { recursive: true });
const names = Object.keys(pictures) as PictureName[];

const bench = useBench({ profile: "whole file", viewport: wideGrid });
let tab: BenchPage;
beforeAll(async () => {
  tab = await bench.open();
  await tab.page.setViewportSize({ width: 1100, height: 640 });
});
beforeEach(() => tab.startEmpty());

test.each(names)("the picture %s can be taken", async (name) => {
  await guideSteps[name](tab);
  await take(path.join(folder, `${name}.png`), path.join(committed, `${name}.png`));
});

test("the picture of the README can be taken", async () => {
  const size = tab.page.viewportSize()!;
  await tab.page.setViewportSize({ width: 1440, height: 950 });
  await readmeStep(tab);
  const shown = path.join(root, "src/bench/assets/bench.png");
  await take(keep ? shown : path.join(folder, "bench.png"), shown);
  await tab.page.setViewportSize(size);
});

test("the guide, the words, the list of functions and the installation are readable in three widths, in light, dark and forced colours", async () => {
  const page = await bench.context.newPage();
  const looks = { 320: ["light", "active"], 400: ["dark", "none"], 1000: ["light", "none"] } as const;
  const faults: string[] = [];
  for (const file of ["index.html", ...guidePages.map(({ file }) => file)]
    .map((name) => `guide/${name}`)
    .concat("help/index.html", "help/words.html", "install.html")) {
    await page.goto(`${tab.origin}/${file}`);
    for (const width of widths) {
      const [colorScheme, forcedColors] = looks[width];
      await page.setViewportSize({ width, height: 900 });
      await page.emulateMedia({ colorScheme, forcedColors });
      faults.push(...(await layoutFaults(page.mainFrame())).map((fault) => `${file}, ${width}: ${fault}`));
      faults.push(...(await findingsIn(page.mainFrame())).map(({ rule, where }) => `${file}, ${width}: ${rule}, ${where}`));
    }
  }
  await page.close();
  expect(faults).toEqual([]);
});

async function take(file: string, shownFile: string): Promise<void> {
  // Without the blinking of a cursor, so that the same screen gives the same picture.
  await tab.page.screenshot({ path: file, caret: "hide", animations: "disabled" });
  await tab.page.keyboard.press("Escape");
  const taken = PNG.sync.read(readFileSync(file));
  const shown = PNG.sync.read(readFileSync(shownFile));
  expect([shown.width, shown.height]).toEqual([taken.width, taken.height]);
}

test("every picture is shown in the guide, and nothing else lies among them", () => {
  const shown = guidePages.flatMap(({ sections }) => sections.flatMap(({ picture }) => picture ?? []));
  expect([...shown].sort()).toEqual([...names].sort());
  expect(existsSync(committed) ? readdirSync(committed).sort() : []).toEqual(names.map((name) => `${name}.png`).sort());
});
