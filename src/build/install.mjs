// @ts-check
// Installs the dependencies when they are missing or older than the lock file. Plain Node: runs before any install.
import { readFileSync, statSync } from "node:fs";
import path from "node:path";
import { npm } from "./run.mjs";

/** @param {string} folder the project's folder */
export function needsInstall(folder) {
  const installed = timeOf(path.join(folder, "node_modules", ".package-lock.json"));
  return installed === undefined || installed < (timeOf(path.join(folder, "package-lock.json")) ?? 0);
}

/**
 * Debian's own Node can be older than what our packages run on, and would fail somewhere deep inside one of them.
 * @param {string} folder
 * @param {string} [version]
 * @returns {string | undefined}
 */
export function nodeProblem(folder, version = process.versions.node) {
  const { engines } = JSON.parse(readFileSync(path.join(folder, "package.json"), "utf8"));
  const wanted = String(engines?.node ?? "").replace(">=", "");
  const [major = 0, minor = 0] = version.split(".").map(Number);
  const [leastMajor = 0, leastMinor = 0] = wanted.split(".").map(Number);
  if (major > leastMajor || (major === leastMajor && minor >= leastMinor)) return undefined;
  return `This is Node ${version}: Gylebook needs ${wanted} or newer.`;
}

/**
 * @param {string} folder
 * @returns {Promise<boolean>} whether everything is there now; what is not has been said
 */
export async function ensureInstalled(folder) {
  const problem = nodeProblem(folder);
  if (problem !== undefined) {
    console.error(problem);
    return false;
  }
  if (!needsInstall(folder)) return true;
  console.log("Installing the dependencies (npm ci) ...");
  if ((await npm(["ci"], { cwd: folder })) === 0) return true;
  console.error("The dependencies could not be installed; npm says why above. It needs the network this once.");
  return false;
}

/** @param {string} file */
function timeOf(file) {
  return statSync(file, { throwIfNoEntry: false })?.mtimeMs;
}
