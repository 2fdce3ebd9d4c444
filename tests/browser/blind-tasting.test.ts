import { expect, test } from "vitest";
import { exampleBatch } from "../../src/workbook/batch/example-batch";
import { writeBatchFile } from "../../src/workbook/exchange/batch-file/write-batch-file";
import { useBench } from "./support/bench-fixture";
import { openScreen } from "./support/pane-screens";
import { pictures } from "./support/pictures";

const bench = useBench({ profile: "whole file" });

/** Many steps in one go, since starting the grid is what takes the time; a busy machine takes many times as long. */
const patienceMs = 600_000;

const members = ["Ada", "Ben", "Cleo"] as const;
/** What each of them brewed, and how each plan turned out. */
const beers = ["Footbridge", "Reed Bed", "Mill Pond"].map((batchName, index) => ({
  ...exampleBatch({
    id: `evening${index}`,
    sheetName: batchName,
    batchName,
    brewedOn: 46270,
    volume: 20,
    units: "metric",
    topUp: 0,
    method: "all-grain",
  }),
  wort: { collected: "" as const, reading: 1.045 + index / 200, scale: "SG" as const, sampleTemperature: 20, volume: 20 },
}));
const files = beers.map((batch, index) => ({
  name: `${members[index]}.gylebook.json`,
  mimeType: "application/json",
  buffer: Buffer.from(writeBatchFile(batch, { prices: false })),
}));

test(
  "a club's evening: a file given twice, codes drawn, scores in by sheet and by letter, a ranking; and a class",
  async () => {
    const tab = await bench.open();
    const pane = await tab.pane();
    const show = (sheet: string) =>
      tab.page.evaluate((name) => window.gylebookBench.univerAPI.getActiveWorkbook()?.getSheetByName(name)?.activate(), sheet);
    const collect = async () => {
      await openScreen(pane, "Share", "Club");
      await pane.locator("#club-file").setInputFiles([...files, { ...files[1]!, name: "Ben again.json" }]);
      await pane.getByText("Ben again.json: “Reed Bed” is on the list already, from Ben.gylebook.json. It was not added twice.").waitFor();
      expect(await pane.getByLabel(/^Whose is/).count()).toBe(3);
      for (const [index, member] of members.entries())
        await pane
          .getByLabel(/^Whose is/)
          .nth(index)
          .fill(member);
    };
    await collect();
    await pane.getByRole("button", { name: "Write the club sheet" }).click();
    await pane.getByText("on “Club” now").waitFor();
    await tab.calculated();

    await openScreen(pane, "Share", "Blind tasting");
    await pane.getByLabel("Tasters, one a line").fill("Ada\nBen\n\nCleo\nBen");
    await tab.page.screenshot({ path: `${pictures}tasting-codes.png` });
    await pane.getByRole("button", { name: "Draw codes for 3 beers" }).click();
    await pane.getByText("“Tasting” has the codes and the key").waitFor();
    await tab.calculated();
    const codes = await Promise.all(["B5", "C5", "D5"].map(async (cell) => Number(await tab.valueAt("Tasting", cell))));
    for (const code of codes) expect(String(code)).toMatch(/^[1-9]{3}$/);

    await pane.getByText("For Ada, Ben, Cleo.").waitFor();
    await pane.getByRole("button", { name: "Write the score sheets" }).click();
    await pane.getByText("3 score sheets made.").waitFor();
    // Everybody likes the beers in the order of their codes.
    const fillIn = async (sheet: string) => {
      for (let row = 7; row <= 9; row += 1) {
        const mark = 5 - codes.indexOf(Number(await tab.valueAt(sheet, `A${row}`)));
        for (const column of ["B", "C", "D", "E", "F"]) await tab.setValue(sheet, `${column}${row}`, mark);
      }
      await tab.calculated();
    };
    for (const member of members) await fillIn(`Scores ${member}`);
    await show("Scores Cleo");
    await tab.page.screenshot({ path: `${pictures}score-sheet.png` });
    // Cleo's own sheet is lost; her line has come by letter.
    const line = String(await tab.valueAt("Scores Cleo", "A12"));
    expect(line).toMatch(/^Gylebook scores\|[a-z\d]{12}\|Cleo(\|\d{3}:\d{2}){3}$/);
    await tab.setValue("Scores Cleo", "B4", "");
    await tab.calculated();
    await openScreen(pane, "Share", "Blind tasting");
    await pane.getByRole("button", { name: "Read the score sheets of this workbook" }).click();
    await pane.getByText("“Tasting” has them now. Ada: 3 of 3 beers, Ben: 3 of 3 beers.").waitFor();
    await pane.getByText("“Scores Cleo” does not say whose it is.").waitFor();
    await pane.getByLabel("Or paste the lines that members sent").fill(`Dear all,\n\n${line}\n\nCleo`);
    await pane.getByRole("button", { name: "Take these scores" }).click();
    await pane.getByText("“Tasting” has them now. Cleo: 3 of 3 beers.").waitFor();
    await tab.calculated();
    expect(await Promise.all(["B8", "C8", "D8"].map((cell) => tab.valueAt("Tasting", cell)))).toEqual([25, 20, 15]);

    // 8 rows for tasters from row 6, the mean, then the seven rows of the answer from row 17, words, workings, ranking from row 29.
    expect(await tab.valueAt("Tasting", "B17")).toBe("difference shown");
    expect(Number(await tab.valueAt("Tasting", "B20"))).toBeCloseTo(100 / 36, 9);
    const ranking = await Promise.all(
      [29, 30, 31].map((row) => Promise.all(["A", "B", "H"].map((column) => tab.valueAt("Tasting", `${column}${row}`)))),
    );
    expect(ranking).toEqual(codes.map((code, place) => [place + 1, code, 3 * (place + 1)]));
    const named = await Promise.all([29, 30, 31].map((row) => tab.valueAt("Tasting", `C${row}`)));
    expect([...named].sort()).toEqual(beers.map(({ batchName }) => batchName).sort());
    await show("Tasting");
    await tab.page.screenshot({ path: `${pictures}tasting.png` });
    await tab.scrollTo("Tasting", "A17");
    await tab.page.screenshot({ path: `${pictures}tasting-ranking.png` });

    await collect();
    await pane.getByLabel("Onto").selectOption("a new sheet");
    await pane.getByLabel("A class: predicted and measured, learner by learner").check();
    await pane.getByRole("button", { name: "Write the class sheet" }).click();
    await pane.getByText("on “Class” now").waitFor();
    await tab.calculated();
    expect(await Promise.all(["A6", "D6", "D7", "D8"].map((cell) => tab.valueAt("Class", cell)))).toEqual([
      "Ada",
      ...beers.map(({ wort }) => expect.closeTo(wort.reading, 6) as unknown),
    ]);
    expect(Number(await tab.valueAt("Class", "E7"))).toBeCloseTo(
      Number(await tab.valueAt("Class", "D7")) - Number(await tab.valueAt("Class", "C7")),
      9,
    );
    await tab.page.screenshot({ path: `${pictures}class.png` });
  },
  patienceMs,
);
