import { expect, test } from "vitest";
import { useBench, wideGrid } from "./support/bench-fixture";

const bench = useBench({ profile: "each test", viewport: wideGrid });

test("a pane that opens while somebody types waits for the cell to be done, without an error", async () => {
  const tab = await bench.open();
  let release = (): void => undefined;
  const held = new Promise<void>((resolve) => (release = resolve));
  await bench.context.route("**/pane/pane-season*.js", async (route) => {
    await held;
    await route.continue();
  });
  await tab.reload();
  await tab.click("Sheet 1", "B3");
  await tab.page.keyboard.type("=1+1", { delay: 10 });
  await tab.page.waitForFunction(() => window.gylebookBench.univerAPI.getActiveWorkbook()!.isCellEditing());
  const arrived = tab.page.waitForResponse(/pane-season[^/]*\.js$/u);
  release();
  await (await arrived).finished();
  const pane = await tab.pane();
  await pane.evaluate(async () => {
    for (let frame = 0; frame < 10; frame += 1) await new Promise(requestAnimationFrame);
  });
  await tab.leaveEditor();
  expect(await tab.valueAt("Sheet 1", "B3")).toBe(2);
});
