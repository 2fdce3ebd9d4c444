import { RichApiError } from "../../excel/errors";
import type { Host } from "../../excel/host";
import { darkTheme, lightTheme } from "../../excel/office-theme";
import { createBenchGlobals } from "../../bench-globals";
import type { Engine } from "../../engine/engine";
import { cellEditingOf } from "./cell-editing";

/** Sets up what the pane's frame takes for office.js. Call it once a first workbook is open. */
export function provideOffice(engine: Engine): Host {
  const { host, Excel, Office } = createBenchGlobals(engine);
  host.cellEditing = cellEditingOf(engine.univerAPI);
  followTheme(host);
  Object.assign(window, { Excel, Office, OfficeExtension: { Error: RichApiError } });
  return host;
}

/** The pane is dark or light with the browser, and so is what Office would say of it. */
function followTheme(host: Host): void {
  const dark = window.matchMedia("(prefers-color-scheme: dark)");
  const take = () => { host.theme = dark.matches ? darkTheme : lightTheme; };
  take();
  dark.addEventListener("change", take);
}
