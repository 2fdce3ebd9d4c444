// @ts-check
// Installs the dependencies when they are missing or older than the lock file. Plain Node: runs before any install.
import { statSync } from "node:fs";
import path from "node:path";
import { npm } from "./run.mjs";

/** @param {string} folder the project's folder */
export function needsInstall(folder) {
  const installed = timeOf(path.join(folder, "node_modules", ".package-lock.json"));
  return installed === undefined || installed < (timeOf(path.join(folder, "package-lock.json")) ?? 0);
}

/**
 * @param {string} folder
 * @returns {Promise<boolean>} whether everything is there now
 */
export async function ensureInstalled(folder) {
  if (!needsInstall(folder)) return true;
  console.log("Installing the dependencies (npm ci) ...");
  return (await npm(["ci"], folder)) === 0;
}

/** @param {string} file */
function timeOf(file) {
  return statSync(file, { throwIfNoEntry: false })?.mtimeMs;
}
