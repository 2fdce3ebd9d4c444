// @ts-check
// Microsoft's own tools for trying an add-in: the one for certificates is installed with the project, the one that opens Excel, with its
// hundreds of packages, is fetched by npm when it is needed. Exact versions: from 3.0.0 on, office-addin-usage-data, which both
// bring along, reports nothing any more.
import path from "node:path";

const settings = "office-addin-dev-settings@4.0.0";

/** @typedef {{ document?: string | undefined, web?: boolean }} Wanted `document`: a workbook file, or on the web its address */

/** @type {(tool: string, ...args: string[]) => string[]} arguments for npm */
const exec = (tool, ...args) => ["exec", "--yes", `--package=${tool}`, "--", tool.replace(/@.*$/, ""), ...args];

/** Makes a certificate for localhost that this computer trusts, or says that there is one. */
export const installCertificate = ["exec", "--no", "--", "office-addin-dev-certs", "install"];

/**
 * Registers the add-in and opens Excel with it; undefined where Excel cannot be started from here.
 * @param {NodeJS.Platform} platform
 * @param {Wanted} wanted
 */
export function sideload(platform, { document, web = false }) {
  if (web)
    return document === undefined ? undefined : exec(settings, "sideload", "manifest.xml", "web", "--app", "excel", "--document", document);
  if (platform !== "win32" && platform !== "darwin") return undefined;
  return exec(
    settings,
    "sideload",
    "manifest.xml",
    "desktop",
    "--app",
    "excel",
    ...(document === undefined ? [] : ["--document", path.resolve(document)]),
  );
}

/**
 * Takes the registration back; undefined where there was none to make.
 * @param {NodeJS.Platform} platform
 */
export const unregister = (platform) =>
  platform === "win32" || platform === "darwin" ? exec(settings, "unregister", "manifest.xml") : undefined;

/** What is to be clicked where no tool can do it. `manifest` is the full path of manifest.xml. */
export const clicks = (/** @type {string} */ manifest) => `Put the add-in into Excel by hand:
  web      open a workbook at excel.cloud.microsoft; Home > Add-ins > More Settings > Upload My Add-in;
           choose ${manifest}
           (if the browser asks whether Excel may reach your local network: allow it)
  Mac      copy manifest.xml into ~/Library/Containers/com.microsoft.Excel/Data/Documents/wef/ (make the folder),
           start Excel again, Home > Add-ins > Gylebook
  Windows  put manifest.xml into a shared folder; File > Options > Trust Center > Trust Center Settings >
           Trusted Add-in Catalogs: add \\\\YOUR-PC\\folder, tick Show in Menu; start Excel again;
           Home > Add-ins > More Add-ins > SHARED FOLDER > Gylebook
Then Home > Gylebook opens the pane, and =GYLE.BEER.ABV(1.05,1.01) shows 5.31.`;

/** How a developer looks inside. */
export const debugging = `Looking inside: Windows: right-click in the pane > Inspect, or F12 with the pane focused. Mac: once
  defaults write com.microsoft.Excel OfficeWebAddinDeveloperExtras -bool true
then right-click in the pane > Inspect Element. Web: the browser's own tools, in the pane's frame.`;
