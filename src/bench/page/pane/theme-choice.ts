import type { Host } from "../../../excel-stand-in/excel/host";
import { contrastTheme, darkTheme, lightTheme, type OfficeTheme } from "../../../excel-stand-in/excel/office-theme";
import { recall, remember } from "../look/memory";

const memory = "gylebook-bench-theme";
const themes: Readonly<Record<string, OfficeTheme>> = { light: lightTheme, dark: darkTheme, contrast: contrastTheme };

/** The theme that the pane is told of, as Office would: the browser's own, or the one chosen here, which outlives a reload. */
export function setUpThemeChoice(host: Host): void {
  const choice = document.getElementById("theme-choice") as HTMLSelectElement;
  const frame = document.getElementById("pane") as HTMLIFrameElement;
  const system = window.matchMedia("(prefers-color-scheme: dark)");
  const kept = recall(memory);
  if (kept !== undefined && kept in themes) choice.value = kept;
  const take = (): void => {
    host.theme = themes[choice.value] ?? (system.matches ? darkTheme : lightTheme);
    // Office tells nobody either: the pane looks when it gets the focus.
    frame.contentWindow?.dispatchEvent(new Event("focus"));
  };
  take();
  system.addEventListener("change", take);
  choice.addEventListener("change", () => {
    remember(memory, choice.value);
    take();
  });
}
