import { expect, test } from "vitest";
import { exampleBatch } from "../../src/workbook/batch/example-batch";
import { dayNumber } from "../../src/workbook/grid/words/day-number";
import { useBench, wideGrid } from "./support/bench-fixture";
import { CompanionPage } from "./support/companion-pane";
import { openScreen } from "./support/pane-screens";

const tasted = ["Looks", "Smells", "Tastes", "Feels", "Would brew it again"];

const bench = useBench({ profile: "each test", viewport: wideGrid });
const contents = exampleBatch({
  id: "test",
  sheetName: "Footbridge",
  batchName: "Footbridge",
  brewedOn: dayNumber("2026-09-05"),
  volume: 5,
  units: "us",
  topUp: 0,
  method: "extract",
});

test("what is tasted is named once for the eye, and every field has a name of its own for a screen reader", async () => {
  const tab = await bench.open();
  const pane = await tab.pane();
  const page = new CompanionPage(tab, pane, contents);
  await page.insertExample();
  await openScreen(pane, "Package", "Tasting");
  await pane.getByLabel("Note to add").waitFor();

  const form = pane.locator("form");
  const seen = await form.evaluate((element) => {
    const copy = element.cloneNode(true) as HTMLElement;
    for (const unseen of copy.querySelectorAll(".unseen")) unseen.remove();
    return copy.textContent ?? "";
  });
  for (const what of tasted) expect(seen.split(what).length - 1, what).toBe(1);

  const names = [...tasted.flatMap((what) => [`${what}, 1 to 5`, `${what}, in words`]), "Tasted on", "Note to add"];
  for (const name of names) expect(await form.getByLabel(name, { exact: true }).count(), name).toBe(1);
  expect(await form.locator("input, select, textarea").count()).toBe(names.length);

  // And each field goes into its own cell.
  await form.getByLabel("Smells, 1 to 5").selectOption("4");
  await form.getByLabel("Would brew it again, in words").fill("Yes, with more hops.");
  await form.getByRole("button", { name: "Write the tasting" }).click();
  await pane.getByText("It is in the sheet, in section 9.").waitFor();
  expect(await page.get("scores", 1)).toBe(4);
  expect(await page.get("scores", 4)).toBe(null);
  expect(
    await tab.valueAt(
      "Footbridge",
      page.cell("scores", 4).replace(/^[A-Z]+/, (column) => String.fromCharCode(column.charCodeAt(0) + 1)),
    ),
  ).toBe("Yes, with more hops.");
}, 200_000);
