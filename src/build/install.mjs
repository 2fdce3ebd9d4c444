// @ts-check
// Installs the dependencies when they are missing or older than the lock file. Plain Node: runs before any install.
import { readFileSync, statSync } from "node:fs";
import path from "node:path";
import { npm } from "./run.mjs";

/** @param {string} folder the project's folder */
export function needsInstall(folder) {
  const [lock, installed] = [path.join(folder, "package-lock.json"), path.join(folder, "node_modules", ".package-lock.json")];
  const when = timeOf(installed);
  if (when === undefined) return true;
  // A checkout or a change of branch makes the lock file newer without another package in it.
  return when < (timeOf(lock) ?? 0) && !isWhatTheLockSays(packagesOf(lock), packagesOf(installed));
}

/** @typedef {Record<string, { version?: string, resolved?: string, integrity?: string, optional?: boolean }>} Packages */

/**
 * npm leaves out of what it notes as installed the project itself and what is optional and made for another system.
 * @param {Packages | undefined} wanted
 * @param {Packages | undefined} installed
 */
function isWhatTheLockSays(wanted, installed) {
  if (wanted === undefined || installed === undefined) return false;
  const same = (/** @type {string} */ place) =>
    ["version", "resolved", "integrity"].every((key) => Reflect.get(wanted[place] ?? {}, key) === Reflect.get(installed[place] ?? {}, key));
  return (
    Object.keys(installed).every(same) &&
    Object.entries(wanted).every(([place, { optional }]) => place === "" || place in installed || optional === true)
  );
}

/**
 * @param {string} lock
 * @returns {Packages | undefined} nothing where it cannot be read
 */
function packagesOf(lock) {
  try {
    return JSON.parse(readFileSync(lock, "utf8")).packages;
  } catch {
    return undefined;
  }
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
