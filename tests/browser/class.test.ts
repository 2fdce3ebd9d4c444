import { expect, test } from "vitest";
import { exampleBatch } from "../../src/workbook/batch/example-batch";
import { planBatch } from "../../src/workbook/batch/sheet/plan";
import { useBench } from "./support/bench-fixture";
import { openScreen } from "./support/pane-screens";
import { pictures } from "./support/pictures";

const bench = useBench({ profile: "whole file" });

/** Four workbooks in one tab, since starting the grid is what takes the time; a busy machine takes many times as long. */
const patienceMs = 400_000;

const plan = exampleBatch({
  id: "lesson",
  sheetName: "Reed Bed",
  batchName: "Reed Bed",
  brewedOn: 46270,
  volume: 20,
  units: "metric",
  topUp: 0,
  method: "all-grain",
});
const { names } = planBatch(plan);
const cell = (name: string, down = 0): string =>
  (names.find((candidate) => candidate.name === name)?.range.split(":")[0] ?? "").replace(/\d+/, (row) => String(Number(row) + down));

/** What three learners read. Cleo's sample was warm: her hydrometer sank too deep. */
const learners = [
  { name: "Ada", original: 1.046, sample: 20, volume: 20.5, final: 1.011 },
  { name: "Ben", original: 1.049, sample: 20, volume: 19.5, final: 1.012 },
  { name: "Cleo", original: 1.05, sample: 30, volume: 19, final: 1.014 },
] as const;
/** Densities of water at 20 and 30 °C (CRC Handbook), and the glass, which grows by 25 millionths for each degree. */
const atTwenty = (reading: number, sample: number): number => (sample === 30 ? (reading * 0.998203 * (1 - 0.00025)) / 0.995647 : reading);

test(
  "a class: the teacher's blank goes out, three learners' readings come back, predicted and measured stand side by side",
  async () => {
    const tab = await bench.open();
    let pane = await tab.pane();
    const file = (name: string, text: string) => ({ name, mimeType: "application/json", buffer: Buffer.from(text) });
    const anotherComputer = async () => {
      await tab.startEmpty();
      pane = await tab.pane();
    };

    // The teacher brewed it once: what was measured and a private word stay behind, prices as well.
    await pane.getByLabel("Name of the batch").fill("Reed Bed");
    await pane.getByLabel("Brewed on").fill("2026-09-05");
    await pane.getByLabel("Metric: L, kg, °C").check();
    await pane.getByLabel("Grain, mashed").check();
    await pane.getByLabel("An example pale ale to change").check();
    await pane.getByRole("button", { name: "Write the batch sheet" }).click();
    await pane.getByText("“Reed Bed” is in the workbook").waitFor();
    await tab.setValue("Reed Bed", cell("og_reading"), 1.048);
    await tab.setValue("Reed Bed", cell("og_temperature"), 20);
    await tab.setValue("Reed Bed", cell("notes"), "private: too sweet for me");
    await tab.calculated();
    await openScreen(pane, "Share", "Hand-out");
    await pane.getByLabel("Name of the blank").fill("Lesson");
    await pane.getByLabel("A batch file, for members with Gylebook").check();
    await pane.getByRole("button", { name: "Make the file" }).click();
    const blank = await pane.getByLabel("Or copy its text").inputValue();
    expect(blank).not.toMatch(/private|1\.048/);
    await tab.page.screenshot({ path: `${pictures}class-blank.png` });

    const returned: { readonly name: string; readonly text: string; readonly predicted: number }[] = [];
    for (const { name, original, sample, volume, final } of learners) {
      await anotherComputer();
      await openScreen(pane, "Share", "Batch file");
      await pane.locator("#batch-file-file").setInputFiles(file("lesson.gylebook.json", blank));
      await pane.getByRole("button", { name: "Put it on a sheet “Lesson”" }).click();
      await pane.getByText("“Lesson” is in the workbook.").waitFor();
      expect(await tab.valueAt("Lesson", cell("og_reading"))).toBe(null);
      for (const [to, value] of [
        [cell("og_reading"), original],
        [cell("og_temperature"), sample],
        [cell("volume_reached"), volume],
      ] as const)
        await tab.setValue("Lesson", to, value);
      const brewedOn = Number(await tab.valueAt("Lesson", cell("brewed_on")));
      for (const [row, reading] of [final + 0.01, final, final].entries()) {
        await tab.setValue("Lesson", cell("reading_times", row), brewedOn + 4.5 + 4 * row);
        await tab.setValue("Lesson", cell("readings", row), reading);
        await tab.setValue("Lesson", cell("readings", row).replace("B", "C"), "SG");
        await tab.setValue("Lesson", cell("readings", row).replace("B", "D"), 20);
      }
      await tab.calculated();
      await openScreen(pane, "Share", "Batch file");
      await pane.getByRole("button", { name: "Make the batch file" }).click();
      const text = await pane.getByLabel("Or copy its text").inputValue();
      returned.push({ name, text, predicted: Number(await tab.valueAt("Lesson", cell("og_plan"))) });
    }

    await anotherComputer();
    await openScreen(pane, "Share", "Club");
    await pane.locator("#club-file").setInputFiles(returned.map(({ name, text }) => file(`${name}.gylebook.json`, text)));
    for (const [index, { name }] of returned.entries())
      await pane
        .getByLabel(/^Whose is/)
        .nth(index)
        .fill(name);
    await pane.getByLabel("A class: predicted and measured, learner by learner").check();
    await pane.getByLabel("Metric: L, EBC").check();
    await pane.getByRole("button", { name: "Write the class sheet" }).click();
    await pane.getByText("on “Class” now").waitFor();
    await tab.calculated();
    await tab.page.screenshot({ path: `${pictures}class-measured.png` });

    const row = (index: number) => Promise.all([..."ACDEFGHIJK"].map((column) => tab.valueAt("Class", `${column}${6 + index}`)));
    const attenuation = Number(plan.yeast.attenuationPercent) / 100;
    for (const [index, { name, original, sample, final }] of learners.entries()) {
      const [who, ogPlan, og, ogOff, fgPlan, fg, fgOff, , alcohol] = await row(index);
      const predicted = returned[index]!.predicted;
      expect(who).toBe(name);
      expect(ogPlan, name).toBeCloseTo(predicted, 9);
      // Wort swells a little more than water.
      expect(Math.abs(Number(og) - atTwenty(original, sample)), name).toBeLessThan(0.0008);
      expect(Number(ogOff), name).toBeCloseTo(Number(og) - predicted, 9);
      expect(Number(fgPlan), name).toBeCloseTo(1 + (predicted - 1) * (1 - attenuation), 3);
      expect(Number(fg), name).toBeCloseTo(final, 4);
      expect(Number(fgOff), name).toBeCloseTo(Number(fg) - Number(fgPlan), 9);
      // Common practice: a fall of gravity of 0.00762 for each per cent of alcohol, good to 0.2.
      expect(Math.abs(Number(alcohol) - (Number(og) - final) / 0.00762), name).toBeLessThan(0.2);
    }
    // Plan and blank are one, so all three predict the same.
    expect(new Set(returned.map(({ predicted }) => predicted.toFixed(6))).size).toBe(1);
    const labels = await Promise.all(Array.from({ length: 45 }, (_, index) => tab.valueAt("Class", `A${6 + index}`)));
    const mean = 6 + labels.indexOf("Mean");
    const measured = learners.map(({ original, sample }) => atTwenty(original, sample));
    expect(Number(await tab.valueAt("Class", `D${mean}`))).toBeCloseTo(measured.reduce((sum, one) => sum + one, 0) / 3, 3);
  },
  patienceMs,
);
