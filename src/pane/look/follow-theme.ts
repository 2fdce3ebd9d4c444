import { paletteFor, type HostTheme } from "./palette";

/** Dresses the page in the host's light, dark or contrast, and follows when it changes. */
export function followTheme(page: Document): void {
  const system = page.defaultView?.matchMedia("(prefers-color-scheme: dark)");
  const dress = (): void => {
    const { kind, palette } = paletteFor(hostTheme(), system?.matches ?? false);
    const root = page.documentElement;
    root.dataset["theme"] = kind;
    for (const [name, color] of Object.entries(palette))
      root.style.setProperty(`--${name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`, color);
  };
  dress();
  system?.addEventListener("change", dress);
  // Excel has no event for it (Outlook alone has), so the pane looks again when somebody comes back to it.
  page.defaultView?.addEventListener("focus", dress);
  page.addEventListener("visibilitychange", dress);
}

/** Undefined in a plain browser, and in hosts that are too old to tell: Microsoft's library throws there. No pane is lost for its colours. */
function hostTheme(): HostTheme | undefined {
  try {
    return typeof Office === "undefined" ? undefined : (Office.context as { officeTheme?: HostTheme } | undefined)?.officeTheme;
  } catch {
    return undefined;
  }
}
