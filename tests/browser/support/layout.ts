import type { Frame } from "playwright-core";
import type { BenchPage } from "./bench-page";

/** Narrow as a phone (and what a page of 1280 px leaves at a zoom of 400 %), Excel's usual pane, and a pane drawn wide. */
export const widths = [320, 400, 1000] as const;

/** Makes the pane so wide, and waits until it is drawn so. */
export async function setPaneWidth({ page }: BenchPage, pane: Frame, width: number): Promise<void> {
  await page.evaluate((wanted) => {
    const side = document.getElementById("pane-side")!;
    side.style.maxWidth = "none";
    side.style.width = `${wanted}px`;
  }, width);
  await pane.waitForFunction((wanted) => Math.abs(window.innerWidth - wanted) < 3, width);
}

/** What is wrong with the screen as it stands, whatever it says: sideways scrolling, words cut or on top of each other, small targets, a hidden focus, a focus that jumps. */
export const layoutFaults = (pane: Frame): Promise<string[]> =>
  pane.evaluate(() => {
    const faults: string[] = [];
    const page = document.documentElement;
    if (page.scrollWidth > page.clientWidth) faults.push(`scrolls sideways: ${page.scrollWidth} in ${page.clientWidth}`);
    const named = (element: Element): string =>
      `${element.tagName.toLowerCase()}${element.id ? `#${element.id}` : ""} “${(element.textContent ?? "").trim().slice(0, 30)}”`;
    const isSeen = (element: Element): boolean =>
      element.closest(".unseen") === null && element.checkVisibility() && element.getClientRects().length > 0;

    for (const element of document.querySelectorAll("body *"))
      if (
        isSeen(element) &&
        element.clientWidth > 0 &&
        element.scrollWidth > element.clientWidth + 1 &&
        getComputedStyle(element).overflowX !== "visible" &&
        !element.matches(".scrolls, textarea, input")
      )
        faults.push(`cut: ${named(element)}, ${element.scrollWidth} in ${element.clientWidth}`);

    const words: { readonly text: Node; readonly box: DOMRect }[] = [];
    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let text = texts.nextNode(); text; text = texts.nextNode()) {
      if ((text.textContent ?? "").trim() === "" || !isSeen(text.parentElement!) || text.parentElement!.closest(".day-strip")) continue;
      const range = document.createRange();
      range.selectNodeContents(text);
      for (const box of range.getClientRects()) {
        if (box.right > page.clientWidth + 1 || box.left < -1)
          faults.push(`over the edge: “${(text.textContent ?? "").trim().slice(0, 40)}”`);
        words.push({ text, box });
      }
    }
    for (const [index, one] of words.entries())
      for (const other of words.slice(index + 1)) {
        const across = Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left);
        const down = Math.min(one.box.bottom, other.box.bottom) - Math.max(one.box.top, other.box.top);
        // The boxes of two lines touch by their leading; words on top of each other share more than that.
        if (one.text !== other.text && across > 2 && down > Math.min(one.box.height, other.box.height) / 2)
          faults.push(
            `on top of each other: “${one.text.textContent?.trim().slice(0, 30)}” and “${other.text.textContent?.trim().slice(0, 30)}”`,
          );
      }

    // In a sentence a target may be as high as its line (WCAG 2.2, 2.5.8); a tick box counts with its label.
    const pressed = [...document.querySelectorAll<HTMLElement>("button:not(.link), a.button, input, select, textarea, summary")].filter(
      isSeen,
    );
    for (const element of pressed) {
      const box = (element.closest("label") ?? element).getBoundingClientRect();
      if (box.width < 24 || box.height < 24) faults.push(`small: ${named(element)}, ${Math.round(box.width)} × ${Math.round(box.height)}`);
    }

    const before = document.activeElement as HTMLElement | null;
    // A line that stays in sight while the rest scrolls has no place in the order from top to bottom, and a date field scrolls to itself.
    const places = new Map(pressed.map((element) => [element, element.getBoundingClientRect()]));
    let last: DOMRect | undefined;
    for (const element of pressed.filter((one) => !(one as HTMLButtonElement).disabled)) {
      if (element.tabIndex > 0) faults.push(`out of order: ${named(element)}`);
      element.focus({ focusVisible: true, preventScroll: true } as FocusOptions);
      const { outlineStyle, outlineWidth } = getComputedStyle(element);
      if (document.activeElement !== element || outlineStyle === "none" || parseFloat(outlineWidth) < 2)
        faults.push(`focus not seen: ${named(element)}`);
      const box = places.get(element)!;
      if (element.closest(".day-strip")) continue;
      if (last && box.bottom < last.top) faults.push(`the focus jumps back up to ${named(element)}`);
      last = box;
    }
    before?.focus({ preventScroll: true });
    return faults;
  });
