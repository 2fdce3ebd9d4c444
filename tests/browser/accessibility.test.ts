import { mkdirSync } from "node:fs";
import type { Frame } from "playwright-core";
import { beforeAll, describe, expect, test } from "vitest";
import { screens } from "../../src/pane/screens";
import { findingsInAll } from "./support/axe";
import { useBench } from "./support/bench-fixture";
import type { BenchPage } from "./support/bench-page";
import { failAtSync } from "./support/pane-faults";
import { layoutFaults, setPaneWidth, widths } from "./support/layout";
import { openScreen } from "./support/pane-screens";

const bench = useBench({ profile: "whole file" });
const pictures = new URL("../../.cache/pictures/screens/", import.meta.url).pathname;

let tab: BenchPage;
let pane: Frame;
beforeAll(async () => {
  mkdirSync(pictures, { recursive: true });
  tab = await bench.open("");
  pane = await tab.pane();
  await setPaneWidth(tab, pane, widths[0]);
}, 180_000);

const sideways = (): Promise<number> => pane.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** Through a constructed sheet: the page's policy takes no style tags. */
const spaceText = (on: boolean): Promise<void> =>
  pane.evaluate((wanted) => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(
      "* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important; } p { margin-bottom: 2em !important; }",
    );
    document.adoptedStyleSheets = wanted ? [sheet] : [];
  }, on);

/** Once it has finished reading the workbook. */
async function settled(): Promise<void> {
  await pane.waitForFunction(
    () => document.querySelector("h1") !== null && !/(Opening|Reading the sheet|Looking)[^.]*…/.test(document.body.textContent ?? ""),
  );
}

/** The screen as it stands now: by axe in every look and every width, laid out well in every width, with a picture of each look as narrow as it gets. */
async function expectReadable(name: string): Promise<void> {
  const faults = await findingsInAll(tab, pane, async (width, look) => {
    if (width === widths[0]) await tab.page.locator("#pane").screenshot({ path: `${pictures}${name}-${look}.png` });
    return look === "light" ? layoutFaults(pane) : [];
  });
  expect(faults, name).toEqual([]);
  await setPaneWidth(tab, pane, widths[0]);
  // WCAG 2.2, 1.4.12: nothing may be lost when readers space their text like this.
  await spaceText(true);
  expect(await sideways(), `${name} scrolls sideways with wider text`).toBeLessThanOrEqual(0);
  await spaceText(false);
}

describe.each(screens.map(({ place, title }) => ({ place, title })))("$place, $title", ({ place, title }) => {
  test("meets WCAG 2.2 AA in light, dark, high contrast and forced colours, 320, 400 and 1,000 px wide, with wider text too, and has the focus on its heading", async () => {
    await openScreen(pane, place, title);
    await settled();
    await pane.waitForFunction(() => document.activeElement?.tagName === "H1");
    await expectReadable(`${place}-${title.replaceAll(" ", "-")}`);
  });
});

test("the pane can be worked by the keyboard alone, and shows where the focus is", async () => {
  await openScreen(pane, "Plan", "New batch");
  await settled();
  // The way of the focus to the heading of a new screen must be over, or it would come in between.
  await pane.waitForFunction(() => document.activeElement?.tagName === "H1");
  const places = pane.getByRole("navigation", { name: "Places in the job" }).getByRole("button");
  await places.first().focus();
  const visited: string[] = [];
  for (let step = 1; step < (await places.count()); step += 1) {
    await tab.page.keyboard.press("Tab");
    const seen = await pane.evaluate(() => ({
      text: document.activeElement?.textContent ?? "",
      outline: Number.parseFloat(getComputedStyle(document.activeElement!).outlineWidth),
    }));
    expect(seen.outline, seen.text).toBeGreaterThanOrEqual(2);
    visited.push(seen.text);
  }
  expect(visited).toEqual((await places.allTextContents()).slice(1));
  await pane.getByRole("button", { name: "Ferment", exact: true }).focus();
  await tab.page.keyboard.press("Enter");
  await pane.waitForFunction(() => document.activeElement?.tagName === "H1");
  await tab.page.keyboard.press("Tab");
  expect(
    await pane.evaluate(
      () => document.querySelector("h1")!.compareDocumentPosition(document.activeElement!) & Node.DOCUMENT_POSITION_FOLLOWING,
    ),
  ).toBeTruthy();
});

// Last, since it leaves an empty workbook behind.
describe("what has come of an action meets them as well", () => {
  const busy = { code: "AccessDenied", message: "You may not do this here." };
  const explain = async (formula: string) => {
    await tab.setValue("Sheet 1", "B2", formula);
    await tab.click("Sheet 1", "D8");
    await tab.click("Sheet 1", "B2");
  };

  test("Explain: an answer with its ±, what is wrong, a function that does not exist, a cell that cannot be read", async () => {
    await tab.startEmpty();
    await tab.setValue("Sheet 1", "A1", 1.05);
    await tab.setValue("Sheet 1", "A2", 12.4);
    await openScreen(pane, "Help", "Explain");
    await explain("=ROUND(GYLE.BEER.ABV(A1,GYLE.WORT.SG(3)),1)");
    await pane.getByRole("article", { name: "GYLE.WORT.SG" }).waitFor();
    for (const summary of await pane.locator("summary").all()) await summary.click();
    await expectReadable("Explain-answer");
    await explain("=GYLE.BEER.ABV(A2,A1)");
    await pane.getByText("looks like °P").first().waitFor();
    await expectReadable("Explain-wrong");
    await explain("=GYLE.BEER.ABX(A2,A1)");
    await pane.getByText("There is no function GYLE.BEER.ABX").first().waitFor();
    await expectReadable("Explain-unknown");
    // A look that an earlier change asked for may take the failure, and the look after it heals: then the next one is to fail.
    const unread = pane.getByText("The cell could not be read.");
    const cells = ["E12", "E13", "E14", "E15"].values();
    await expect
      .poll(
        async () => {
          await failAtSync(pane, 1, busy);
          await tab.click("Sheet 1", cells.next().value!);
          return unread.waitFor({ timeout: 8_000 }).then(
            () => "said",
            () => "not yet",
          );
        },
        { timeout: 40_000 },
      )
      .toBe("said");
    await expectReadable("Explain-unread");
  });

  test("Check and Repair: what was found, a repair refused, done, done without a look at it; nothing found", async () => {
    await openScreen(pane, "Help", "Check");
    await tab.setValue("Sheet 1", "B3", "=_xldudf_GYLE_BEER_ABV(A1,1.01)");
    await pane.getByRole("button", { name: "Check now" }).click();
    await pane.getByRole("button", { name: "Repair 1 cell" }).waitFor();
    await expectReadable("Check-found");
    await failAtSync(pane, 3, busy);
    await pane.getByRole("button", { name: "Repair 1 cell" }).click();
    await pane.getByText("Nothing was repaired").waitFor();
    await expectReadable("Check-repair-refused");
    await failAtSync(pane, 4, busy);
    await pane.getByRole("button", { name: "Repair 1 cell" }).click();
    await pane.getByText("could not be seen at once").waitFor();
    await pane.getByText("1 sheet looked through").waitFor();
    await expectReadable("Check-repaired-unseen");
    await tab.setValue("Sheet 1", "B3", "=_xldudf_GYLE_BEER_ABV(A1,1.01)");
    await pane.getByRole("button", { name: "Check again" }).click();
    await pane.getByRole("button", { name: "Repair 1 cell" }).click();
    await pane.getByText("None shows #NAME? any more.").waitFor();
    await expectReadable("Check-repaired");
    await tab.setValue("Sheet 1", "B2", 1);
    await pane.getByRole("button", { name: "Check again" }).click();
    await pane.getByText("no problems found").waitFor();
    await expectReadable("Check-nothing");
    await failAtSync(pane, 1, busy);
    await pane.getByRole("button", { name: "Check again" }).click();
    await pane.getByText("The check did not finish.").waitFor();
    await expectReadable("Check-broken-off");
  });
});
