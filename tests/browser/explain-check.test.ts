import { expect, test } from "vitest";
import { useBench } from "./support/bench-fixture";
import { failAtSync } from "./support/pane-faults";
import { openScreen } from "./support/pane-screens";
import { pictures } from "./support/pictures";

const bench = useBench({ profile: "whole file" });

test("a function is put into a cell, the cell is explained as the selection moves, and the check leads to what is wrong", async () => {
  const tab = await bench.open();
  const pane = await tab.pane();
  await tab.setValue("Sheet 1", "A1", 1.05);
  await tab.setValue("Sheet 1", "A2", 1.01);
  await tab.click("Sheet 1", "B2");

  await openScreen(pane, "Help", "Functions");
  await pane.getByRole("button", { name: "GYLE.BEER.ABV", exact: true }).click();
  await pane.getByText("Into B2 on “Sheet 1”").waitFor();
  await pane.getByLabel("original_gravity", { exact: true }).fill("A1");
  await tab.click("Sheet 1", "A2");
  await pane.getByRole("button", { name: "Use the selection for final_gravity" }).click();
  await pane.getByText("would answer").waitFor();
  await pane
    .locator("#pane, body")
    .first()
    .screenshot({ path: `${pictures}put.png` });
  await pane.getByRole("button", { name: "Put into B2" }).click();
  await pane.getByText("Written. The cell shows").waitFor();
  await tab.calculated();
  expect(Number(await tab.valueAt("Sheet 1", "B2"))).toBeCloseTo(5.3, 1);

  await openScreen(pane, "Help", "Explain");
  await tab.click("Sheet 1", "B2");
  await pane.getByRole("article", { name: "GYLE.BEER.ABV" }).waitFor();
  await pane.getByText("if original_gravity ± 0.002 SG and final_gravity ± 0.002 SG").waitFor();
  await pane.locator("body").screenshot({ path: `${pictures}explain.png` });
  await tab.setValue("Sheet 1", "A1", 12.4);
  await pane.getByText("looks like °P").first().waitFor();
  await tab.page.emulateMedia({ colorScheme: "dark" });
  await pane.locator("body").screenshot({ path: `${pictures}explain-wrong-dark.png` });
  await tab.page.emulateMedia({ colorScheme: "light" });
  await pane.getByRole("button", { name: "Stay here" }).click();
  await tab.click("Sheet 1", "C5");
  await pane.getByRole("button", { name: "Follow again" }).click();
  await pane.getByText("This cell is empty").waitFor();

  await openScreen(pane, "Help", "Check");
  await pane.getByRole("button", { name: "Check now" }).click();
  await pane.getByText("1 to look at").waitFor();
  await pane.locator("body").screenshot({ path: `${pictures}check.png` });
  await pane.getByRole("button", { name: "Go to B2 on “Sheet 1”" }).click();
  await openScreen(pane, "Help", "Explain");
  await pane.getByRole("heading", { name: "B2" }).waitFor();
}, 200_000);

test("a function inside a native formula is explained, what Excel left at #NAME? is repaired, and a check can be stopped", async () => {
  const tab = await bench.emptied();
  const pane = await tab.pane();
  await tab.setValue("Sheet 1", "A1", 1.05);
  await tab.setValue("Sheet 1", "A2", 1.01);
  await tab.setValue("Sheet 1", "B1", '=IF(A1>1,ROUND(GYLE.BEER.ABV(A1,A2),1)&" %","")');
  await tab.setValue("Sheet 1", "B2", "=_xldudf_GYLE_BEER_ABV(A1,A2)");
  await tab.click("Sheet 1", "B1");
  await openScreen(pane, "Help", "Explain");
  const card = pane
    .getByRole("article", { name: "GYLE.BEER.ABV" })
    .or(pane.locator("article, section").filter({ has: pane.getByRole("heading", { name: "GYLE.BEER.ABV" }) }))
    .first();
  await card.getByText("1.050 SG").first().waitFor();
  await pane.locator(".cell-shows", { hasText: "5.3 %" }).waitFor();
  await tab.click("Sheet 1", "B2");
  await pane.locator(".cell-shows", { hasText: "#NAME?" }).waitFor();
  await pane.locator(".note.wrong").first().waitFor();

  await openScreen(pane, "Help", "Check");
  // Presses Stop as soon as it is there: the workbook is far too small for a hand.
  await pane.evaluate(() => {
    new MutationObserver((_, observer) => {
      const stop = [...document.querySelectorAll("button")].find(({ textContent }) => textContent === "Stop");
      if (!stop) return;
      observer.disconnect();
      stop.click();
    }).observe(document.body, { childList: true, subtree: true });
  });
  await pane.getByRole("button", { name: "Check now" }).click();
  await pane.getByText("Stopped after 0 sheets of 1.").waitFor();
  await pane.getByRole("button", { name: "Check again" }).click();
  await pane.getByLabel("One formula at #NAME?: enter again").waitFor();
  await pane.locator("body").screenshot({ path: `${pictures}repair.png` });
  await pane.getByRole("button", { name: "Repair 1 cell" }).click();
  await pane.getByText("1 formula was entered anew. None shows #NAME? any more.").waitFor();
  // What was found before is gone without another press, and the keyboard is at what became of it.
  await pane.getByText("1 sheet looked through: no problems found").waitFor();
  expect(await pane.locator(".findings li").count()).toBe(0);
  expect(await pane.evaluate(() => document.activeElement?.className)).toBe("note");
  await pane.locator("body").screenshot({ path: `${pictures}repaired.png` });
  await tab.calculated();
  expect(Number(await tab.valueAt("Sheet 1", "B2"))).toBeCloseTo(5.3, 1);
}, 200_000);

test("a repair that fails keeps what was found; one that could not be looked at again says so, and the workbook is read anew", async () => {
  const tab = await bench.emptied();
  const pane = await tab.pane();
  await tab.setValue("Sheet 1", "A1", "=_xldudf_GYLE_BEER_ABV(1.05,1.01)");
  await tab.setValue("Sheet 1", "A2", "=_xldudf_GYLE_BEER_ABV(1.06,1.01)");
  await openScreen(pane, "Help", "Check");
  await pane.getByRole("button", { name: "Check now" }).click();
  const repair = pane.getByRole("button", { name: "Repair 2 cells" });
  await repair.waitFor();
  expect(await pane.locator(".findings li").count()).toBe(2);

  // The trip that writes fails, so nothing is written: all that was found still holds, and the repair can be tried again.
  await failAtSync(pane, 3, { code: "GeneralException", message: "the line broke" });
  await repair.click();
  await pane.getByText("Nothing was repaired, and the cells are as they were. The spreadsheet said: the line broke").waitFor();
  expect(await pane.locator(".findings li").count()).toBe(2);
  await tab.calculated();
  expect(await tab.valueAt("Sheet 1", "A1")).toBe("#NAME?");

  // The trip after the write fails: they are entered, but nobody has seen what they show.
  await failAtSync(pane, 4, { code: "GeneralException", message: "the line broke" });
  await repair.click();
  await pane
    .getByText(
      "2 formulas were entered anew. Whether any still shows #NAME? could not be seen at once: the workbook is looked through again.",
    )
    .waitFor();
  await pane.getByText("1 sheet looked through: no problems found").waitFor();
  expect(await pane.locator(".findings li").count()).toBe(0);
  expect(await pane.getByText("None shows #NAME?").count()).toBe(0);
  expect(Number(await tab.valueAt("Sheet 1", "A1"))).toBeCloseTo(5.3, 1);
  await pane.locator("body").screenshot({ path: `${pictures}repaired-unseen.png` });

  // And where the check after it fails as well, nothing old stays on the screen.
  await tab.setValue("Sheet 1", "A1", "=_xldudf_GYLE_BEER_ABV(1.05,1.01)");
  await pane.getByRole("button", { name: "Check again" }).click();
  const again = pane.getByRole("button", { name: "Repair 1 cell" });
  await again.waitFor();
  await failAtSync(pane, 4, { code: "GeneralException", message: "the line broke" });
  await failAtSync(pane, 5, { code: "AccessDenied", message: "no reading today." });
  await again.click();
  await pane.getByText("1 formula was entered anew.").waitFor();
  await pane.getByText("The check did not finish. The spreadsheet said: no reading today.").waitFor();
  expect(await pane.locator(".findings li").count()).toBe(0);
  expect(await pane.getByText("nothing was changed").count()).toBe(0);
  await pane.getByRole("button", { name: "Check now" }).waitFor();
}, 200_000);

test("what the spreadsheet refuses is told in words that help, on Explain and on the screens of a batch, and is over with the next look", async () => {
  const tab = await bench.emptied();
  const pane = await tab.pane();
  await tab.setValue("Sheet 1", "A1", "=GYLE.BEER.ABV(1.05,1.01)");
  await tab.click("Sheet 1", "A1");
  await openScreen(pane, "Help", "Explain");
  const card = pane.getByRole("article", { name: "GYLE.BEER.ABV" });
  await card.waitFor();
  await failAtSync(pane, 1, { code: "AccessDenied", message: "You may not look here." });
  await tab.click("Sheet 1", "B3");
  await pane
    .getByText(
      "The cell could not be read. The spreadsheet said: You may not look here. If the sheet is protected, take the protection off (Review, Unprotect Sheet), then try again.",
    )
    .waitFor();
  // A1's explanation must not pass for B3's.
  expect(await card.count()).toBe(0);
  await tab.click("Sheet 1", "A1");
  await card.waitFor();
  expect(await pane.getByText("could not be read").count()).toBe(0);

  // The way to a cell on a sheet that is deleted just then.
  await openScreen(pane, "Help", "Check");
  await tab.setValue("Sheet 1", "A1", "=GYLE.BEER.ABV(12.4,1.01)");
  await pane.getByRole("button", { name: "Check now" }).click();
  const way = pane.getByRole("button", { name: "Go to A1 on “Sheet 1”" });
  await way.waitFor();
  await failAtSync(pane, 1, { code: "ItemNotFound", message: "The requested resource doesn't exist." });
  await way.click();
  await pane
    .getByText("A1 on “Sheet 1” could not be shown. The sheet is gone, or a name or table on it: somebody deleted or renamed it.")
    .waitFor();

  await openScreen(pane, "Brew", "Brew day");
  await pane.getByText("Bring a batch sheet to the front").waitFor();
  await failAtSync(pane, 1, { code: "InvalidOperationInCellEditMode", message: "Excel is in cell-editing mode." });
  await tab.setValue("Sheet 1", "A5", 1);
  await pane.getByText("The sheet could not be read. A cell is being edited: finish it with Enter, then try again.").waitFor();
  await pane.getByRole("button", { name: "Try again" }).click();
  await pane.getByText("Bring a batch sheet to the front").waitFor();
}, 200_000);
