import type { Frame } from "playwright-core";
import { expect, test } from "vitest";
import { screens } from "../../src/pane/screens";
import { exampleBatch } from "../../src/workbook/batch/example-batch";
import { useBench } from "./support/bench-fixture";
import { CompanionPage } from "./support/companion-pane";
import { openScreen } from "./support/pane-screens";

const bench = useBench({ profile: "whole file" });

/** Markup that a page would make an element of, if a text were ever put into it as HTML; a tag of our own, so that none can be mistaken for it. */
const hostile = (place: string): string => `${place}<img src=x onerror="document.title='taken'"><x-taken>&lt;b&gt;`;

/** What got into a page as an element. */
const taken = (frame: Frame): Promise<number> => frame.evaluate(() => document.querySelectorAll('x-taken, img[src="x"], [onerror]').length);

const sheetName = "A<x-taken><i>1";

/** Many screens in one go, since starting the grid is what takes the time. */
const patienceMs = 400_000;

test(
  "markup in a workbook's texts is text on every screen of the pane and on the bench",
  async () => {
    const tab = await bench.open();
    const pane = await tab.pane();
    const page = new CompanionPage(
      tab,
      pane,
      exampleBatch({ id: "test", sheetName, batchName: sheetName, brewedOn: 46270, volume: 5, units: "us", topUp: 0, method: "extract" }),
    );
    await page.insertExample();
    for (const name of ["batch_name", "kit_name", "style", "yeast_name", "notes", "salts", "priming_sugar", "bottle_kind"])
      await page.type(name, hostile(name));
    const firstMalt = page.cell("malt").replace(/^[A-Z]+/, "A");
    await tab.setValue(sheetName, firstMalt, hostile("malt"));
    await tab.setValue(sheetName, page.cell("hops").replace(/^[A-Z]+/, "A"), hostile("hop"));
    await tab.setValue(sheetName, page.cell("steps"), hostile("step"));
    await tab.calculated();
    await tab.click(sheetName, firstMalt);

    let shown = 0;
    for (const { place, title } of screens) {
      await openScreen(pane, place, title);
      await pane.waitForFunction(
        () =>
          document.activeElement?.tagName === "H1" && !/(Opening|Reading the sheet|Looking)[^.]*…/.test(document.body.textContent ?? ""),
      );
      const text = await pane.evaluate(() => document.body.textContent ?? "");
      if (text.includes("<x-taken>")) shown++;
      expect([title, await taken(pane), await taken(tab.page.mainFrame())]).toEqual([title, 0, 0]);
    }
    // Letter for letter, on many screens: the names are shown there.
    expect(shown).toBeGreaterThan(8);
    // The workbook is called by its batch, so the name is in the title, too; an element would have made it that one word.
    expect(await tab.page.title()).not.toBe("taken");
    // And an element would have been found.
    await pane.evaluate(() => document.body.append(document.createElement("x-taken")));
    expect(await taken(pane)).toBe(1);
  },
  patienceMs,
);
