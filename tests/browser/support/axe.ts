import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Frame } from "playwright-core";
import type { BenchPage } from "./bench-page";
import { setPaneWidth, widths } from "./layout";

const source = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

export interface Finding {
  readonly rule: string;
  readonly where: string;
  readonly why: string;
}

const standards = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];
/** Rules that look at nothing but colours, and what is seen of them. */
const ofColours = ["color-contrast", "link-in-text-block"];

/**
 * Axe asks for the colour that letters are filled with, and Chromium names the page's own there even while the computer's stands in its
 * place. No style of ours fills letters with anything but their colour.
 */
function askForColour(): void {
  const read = CSSStyleDeclaration.prototype.getPropertyValue;
  CSSStyleDeclaration.prototype.getPropertyValue = function (name: string): string {
    return read.call(this, name === "-webkit-text-fill-color" ? "color" : name);
  };
}

/** What axe finds in the pane against WCAG 2.2, A and AA: by all of its rules, by those of colours, or by the others. */
export async function findingsIn(pane: Frame, which: "all" | "colours" | "others" = "all"): Promise<Finding[]> {
  if (!(await pane.evaluate(() => "axe" in window))) {
    await pane.evaluate(source);
    await pane.evaluate(askForColour);
  }
  const how = {
    all: { runOnly: standards },
    colours: { runOnly: { type: "rule", values: ofColours } },
    others: { runOnly: standards, rules: Object.fromEntries(ofColours.map((rule) => [rule, { enabled: false }])) },
  }[which];
  return pane.evaluate(async (options) => {
    const { axe } = window as unknown as {
      axe: {
        run(
          where: Document,
          how: object,
        ): Promise<{ violations: { id: string; nodes: { target: string[]; failureSummary?: string }[] }[] }>;
      };
    };
    const { violations } = await axe.run(document, options);
    return violations.flatMap(({ id, nodes }) =>
      nodes.map(({ target, failureSummary }) => ({ rule: id, where: target.join(" "), why: failureSummary ?? "" })),
    );
  }, how);
}

/** The host's themes, and a computer that puts its own colours in place of every page's. */
export const looks = ["light", "dark", "contrast", "forced"] as const;
export type Look = (typeof looks)[number];

async function setLook({ page }: BenchPage, pane: Frame, look: Look): Promise<void> {
  await page.emulateMedia({ forcedColors: look === "forced" ? "active" : "none" });
  const theme = look === "forced" ? "contrast" : look;
  await page.selectOption("#theme-choice", theme);
  await pane.waitForFunction((wanted) => document.documentElement.dataset["theme"] === wanted, theme);
}

/** What a rule can go by: every element that is seen with its colours and letters, and with its place and size. */
const drawnNow = (pane: Frame): Promise<{ readonly colours: string; readonly places: string }> =>
  pane.evaluate(() => {
    const [colours, places]: [string[], string[]] = [[], []];
    for (const element of document.querySelectorAll("body, body *")) {
      if (!element.checkVisibility()) continue;
      const { color, backgroundColor, backgroundImage, opacity, fontSize, fontWeight, borderColor, textDecorationLine } =
        getComputedStyle(element);
      const style = [color, backgroundColor, backgroundImage, opacity, fontSize, fontWeight, borderColor, textDecorationLine];
      const { x, y, width, height } = element.getBoundingClientRect();
      colours.push(`${element.tagName} ${style.join(" ")}`);
      places.push(`${element.tagName} ${[x, y, width, height].map(Math.round).join(" ")}`);
    }
    return { colours: colours.join("\n"), places: places.join("\n") };
  });

/**
 * What axe finds on the screen as it stands, in every look and every width. The same rules would find the same where neither a colour nor
 * a place differs from what was looked at before, so they are asked once for each set of colours and once for each lay-out. A look is
 * other values of the same colours (`src/pane/look/palette.ts`): a width that shows what the one before it shows, in the same colours, is
 * gone through in one look, any other in all.
 *
 * @param at called wherever the screen is drawn anew, for what else is to be looked at there
 */
export async function findingsInAll(
  tab: BenchPage,
  pane: Frame,
  at: (width: (typeof widths)[number], look: Look) => Promise<readonly string[]>,
): Promise<string[]> {
  const faults: string[] = [];
  const known = { colours: new Set<string>(), places: new Set<string>() };
  for (const width of widths) {
    await setPaneWidth(tab, pane, width);
    for (const look of looks) {
      await setLook(tab, pane, look);
      const drawn = await drawnNow(pane);
      const isNew = { colours: !known.colours.has(drawn.colours), places: !known.places.has(drawn.places) };
      known.colours.add(drawn.colours);
      known.places.add(drawn.places);
      const which = isNew.colours && isNew.places ? "all" : isNew.colours ? "colours" : isNew.places ? "others" : undefined;
      const found = which === undefined ? [] : await findingsIn(pane, which);
      faults.push(...found.map(({ rule, where, why }) => `${width} px, ${look}: ${rule}, ${where}: ${why}`));
      faults.push(...(await at(width, look)).map((fault) => `${width} px, ${look}: ${fault}`));
      if (look === looks[0] && !isNew.colours) break;
    }
    await setLook(tab, pane, looks[0]);
  }
  return faults;
}
