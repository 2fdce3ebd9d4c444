// @ts-check
// Installs programs from Debian's packages, where that is ours to do: as root, on Debian.
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { run } from "./run.mjs";

const quiet = { env: { DEBIAN_FRONTEND: "noninteractive" } };
const install = ["install", "-y", "-qq", "--no-install-recommends"];

export const mayInstallFromDebian = () => process.getuid?.() === 0 && isDebian();

/** @param {readonly string[]} packages */
export async function installFromDebian(packages) {
  await run("apt-get", ["update", "-qq"], quiet);
  const here = obtainable(packages, (list) => spawnSync("apt-get", [...install, "--simulate", ...list], { stdio: "ignore" }).status === 0);
  if (here.length === 0) return;
  console.log(`Installing ${here.join(", ")} (apt) ...`);
  await run("apt-get", [...install, ...here], quiet);
}

/**
 * apt installs all that it is asked for or nothing: what this Debian does not have must not keep out the rest.
 * @param {readonly string[]} packages
 * @param {(packages: readonly string[]) => boolean} installable
 */
export const obtainable = (packages, installable) => (installable(packages) ? packages : packages.filter((name) => installable([name])));

function isDebian() {
  try {
    return /^ID=debian$/m.test(readFileSync("/etc/os-release", "utf8"));
  } catch {
    return false;
  }
}
