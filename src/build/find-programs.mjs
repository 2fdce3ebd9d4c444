// @ts-check
// The one place that knows where other people's programs are: the browser and LibreOffice that the tests use.
import { existsSync } from "node:fs";
import path from "node:path";

const programFiles = [process.env["PROGRAMFILES"], process.env["PROGRAMFILES(X86)"], process.env["LOCALAPPDATA"]].filter((folder) => folder !== undefined);
const inProgramFiles = (/** @type {string} */ place) => programFiles.map((folder) => path.join(folder, place));

/** A browser of Chromium's family, or undefined. GYLEBOOK_CHROMIUM names one outright. */
export function findChromium() {
  return find("GYLEBOOK_CHROMIUM", ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "microsoft-edge", "microsoft-edge-stable"], [
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
    "/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge",
    ...inProgramFiles("Google\\Chrome\\Application\\chrome.exe"),
    ...inProgramFiles("Microsoft\\Edge\\Application\\msedge.exe"),
  ]);
}

/** LibreOffice's command-line program, or undefined. GYLEBOOK_SOFFICE names one outright. */
export function findSoffice() {
  return find("GYLEBOOK_SOFFICE", ["soffice", "libreoffice"], ["/Applications/LibreOffice.app/Contents/MacOS/soffice", ...inProgramFiles("LibreOffice\\program\\soffice.com")]);
}

/**
 * The full path of a program on the PATH, or undefined.
 * @param {string} name without an ending
 */
export function findOnPath(name) {
  const endings = process.platform === "win32" ? [".exe", ".cmd"] : [""];
  const folders = (process.env["PATH"] ?? "").split(path.delimiter).filter((folder) => folder !== "");
  return folders.flatMap((folder) => endings.map((ending) => path.join(folder, name + ending))).find((file) => existsSync(file));
}

/**
 * @param {string} variable
 * @param {readonly string[]} names
 * @param {readonly string[]} places
 */
function find(variable, names, places) {
  const told = process.env[variable];
  // What was named outright is used or missed, never quietly replaced by another.
  if (told !== undefined && told !== "") return existsSync(told) ? told : findOnPath(told);
  for (const name of names) {
    const found = findOnPath(name);
    if (found !== undefined) return found;
  }
  return places.find((place) => existsSync(place));
}
