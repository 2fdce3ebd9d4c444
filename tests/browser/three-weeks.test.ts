import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { openWorkbook } from "../../src/excel-stand-in/xlsx";
import { registry } from "../../src/functions/registry";
import { firstExtractBatch } from "../../src/workbook/batch/example-batch";
import { isoDay } from "../../src/workbook/grid/words/day-number";
import { address } from "../../src/workbook/grid/plan/addresses";
import { useBench } from "./support/bench-fixture";
import { CompanionPage, fakePaneClock } from "./support/companion-pane";
import { openScreen } from "./support/pane-screens";

const bench = useBench({ profile: "each test" });
const sample = firstExtractBatch();

const clockOf = (fraction: number): string => {
  const minutes = Math.round((fraction % 1) * 1440);
  return `${String(Math.floor(minutes / 60)).padStart(2, "0")}:${String(minutes % 60).padStart(2, "0")}`;
};
const moment = (dayNumber: number): string => `${isoDay(dayNumber)}T${clockOf(dayNumber)}`;

type Cell = number | string;

/** Constants and formulas, and what they show, of one sheet of a file. */
async function cellsOf(bytes: Uint8Array, sheetName: string): Promise<{ contents: Map<string, Cell>; values: Map<string, Cell> }> {
  const { snapshot, computed } = await openWorkbook(bytes, { functionNames: registry.map(({ id }) => id) });
  const sheetId = snapshot.sheetOrder.find((id) => snapshot.sheets[id]?.name === sheetName) ?? "";
  const contents = new Map<string, Cell>();
  const values = new Map<string, Cell>();
  const at = (row: string, column: string) => address(Number(row) + 1, Number(column) + 1);
  for (const [row, columns] of Object.entries(snapshot.sheets[sheetId]?.cellData ?? {})) {
    for (const [column, cell] of Object.entries(columns as Record<string, { f?: string | null; v?: Cell | null } | null>)) {
      const content = cell?.f ? cell.f.replaceAll(" ", "") : cell?.v;
      if (content !== undefined && content !== null && content !== "") contents.set(at(row, column), content);
    }
  }
  for (const [row, columns] of Object.entries(computed[sheetId]?.values ?? {})) {
    for (const [column, value] of Object.entries(columns as Record<string, unknown>))
      if (typeof value === "number" || (typeof value === "string" && value !== "")) values.set(at(row, column), value);
  }
  return { contents, values };
}

/** Times of day in the sample carry the rounding of their day numbers: a millionth is less than a tenth of a second. */
function expectSameCells(ours: Map<string, Cell>, sample: Map<string, Cell>, except: string): void {
  const different = [...new Set([...ours.keys(), ...sample.keys()])].filter((cell) => {
    const [one, other] = [ours.get(cell), sample.get(cell)];
    return (
      cell !== except &&
      !(typeof one === "number" && typeof other === "number"
        ? Math.abs(one - other) <= 1e-6 * Math.max(1, Math.abs(other)) && (Math.abs(other) < 1000 || Math.abs(one - other) < 1e-6)
        : one === other)
    );
  });
  expect(different.map((cell) => `${cell}: ${String(ours.get(cell))}, in the sample ${String(sample.get(cell))}`)).toEqual([]);
}

test("a batch is brewed, fermented, bottled and tasted from the pane, and the sheet is the sample", async () => {
  const tab = await bench.open();
  await fakePaneClock(tab.page, await tab.pane());
  await tab.reload();
  const pane = await tab.pane();
  const page = new CompanionPage(tab, pane, sample);
  await page.at("2026-09-05T09:30");
  await page.insertExample();
  // What the pane has no form for, the brewer types into the sheet.
  await page.type("batch_name", sample.batchName);
  await page.type("batch_number", 1);
  await page.type("salts", sample.salts);

  await openScreen(pane, "Brew", "Brew day");
  for (const [row, time] of sample.happened.entries()) {
    await page.at(`2026-09-05T${clockOf(Number(time))}`);
    await page.pressDue(row);
  }
  await pane.getByText("The brew day is done.").waitFor();

  await openScreen(pane, "Ferment", "Reading");
  await pane.getByLabel("Reading, SG").fill(String(sample.wort.reading));
  await pane.getByLabel("Sample temperature, °F").fill(String(sample.wort.sampleTemperature));
  await pane.getByLabel("In the fermenter, US gal").fill(String(sample.wort.volume));
  await pane.getByText("Gravity 1.052").waitFor();
  await pane.getByRole("button", { name: "Write the reading" }).click();
  await pane.getByText("The original gravity is in the sheet.").waitFor();

  const verdicts: unknown[] = [];
  for (const [row, { when, reading, sampleTemperature, beerTemperature }] of sample.readings.entries()) {
    await page.at(moment(when));
    // Days lie between: the pane was closed and is opened again.
    await openScreen(pane, "Brew", "Why");
    await openScreen(pane, "Ferment", "Reading");
    await pane.getByLabel("Beer, from the fermenter").check();
    await pane.getByLabel("Reading, SG").fill(String(reading));
    await pane.getByLabel("Sample temperature, °F").fill(String(sampleTemperature));
    await pane.getByLabel("Beer temperature, °F").fill(String(beerTemperature));
    await pane.getByRole("button", { name: "Write the reading" }).click();
    await pane.locator(".outcome .answer").waitFor();
    expect(await page.get("readings", row)).toBe(reading);
    verdicts.push(await page.get("verdict"));
  }
  expect(verdicts).toEqual(["working", "working", "nearly", "nearly", "steady"]);
  await pane.getByText(/^Steady, by .* readings/).waitFor();

  await page.at(`${isoDay(Number(sample.packaging.packagedOn))}T15:00`);
  await openScreen(pane, "Package", "Packaging");
  await pane.getByLabel("Bottles filled").fill(String(sample.packaging.bottlesFilled));
  await pane.getByRole("button", { name: "Write it to the sheet" }).click();
  await pane.getByText("It is in the sheet, in section 8.").waitFor();

  await page.at(`${isoDay(Number(sample.tasting.tastedOn))}T19:00`);
  await openScreen(pane, "Package", "Tasting");
  const { looks, smells, tastes, feels, again, notes } = sample.tasting;
  for (const [index, { score, words }] of [looks, smells, tastes, feels, again].entries()) {
    await pane.locator(`#score-${index}`).selectOption(String(score));
    await pane.locator(`#words-${index}`).fill(words);
  }
  await pane.getByLabel("Note to add").fill(notes);
  await pane.getByRole("button", { name: "Write the tasting" }).click();
  await pane.getByText("It is in the sheet, in section 9.").waitFor();

  await tab.calculated();
  const ours = await cellsOf(await tab.saveFile(), "Batch 1");
  const shipped = await cellsOf(readFileSync(new URL("../../sample-workbooks/first-extract-batch.xlsx", import.meta.url)), "Batch 1");
  expect(shipped.contents.size).toBeGreaterThan(400);
  expect(shipped.values.size).toBeGreaterThan(200);
  expectSameCells(ours.contents, shipped.contents, page.cell("batch_id"));
  expectSameCells(ours.values, shipped.values, page.cell("batch_id"));
}, 400_000);
