import { expect } from "vitest";
import { findingsIn } from "./axe";
import type { CompanionPage } from "./companion-pane";
import { pictures } from "./pictures";

/** What has come of an action holds to WCAG 2.2 AA in every theme; the pictures are to be looked at. */
export async function picture({ tab }: CompanionPage, name: string): Promise<void> {
  const pane = await tab.pane();
  for (const theme of ["contrast", "dark", "light"]) {
    await tab.page.selectOption("#theme-choice", theme);
    await pane.waitForFunction((wanted) => document.documentElement.dataset["theme"] === wanted, theme);
    await tab.page.locator("#pane").screenshot({ path: `${pictures}companion-${name}-${theme}.png` });
    expect(await findingsIn(pane), `${name}, ${theme}`).toEqual([]);
  }
}
