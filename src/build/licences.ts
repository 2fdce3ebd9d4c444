// `npm run licences`: every package with its licence, what ships first; fails on a licence that is not allowed, and on a
// script that would run on installing without anybody having decided so.
import { readFileSync } from "node:fs";
import path from "node:path";
import { byName, shipped, toolsOnly } from "./licences/allowed";
import { licenceOf, licenceProblems, type AllowedScripts } from "./licences/check";
import { lockedPackages, type LockedPackage } from "./licences/lock";
import { root } from "./run.mjs";

const packages = lockedPackages();
const { allowScripts } = JSON.parse(readFileSync(path.join(root, "package.json"), "utf8")) as { allowScripts: AllowedScripts };

for (const [title, some] of [
  ["What may be in what we ship", packages.filter(({ toolOnly }) => !toolOnly)],
  ["Tools for building and testing", packages.filter(({ toolOnly }) => toolOnly)],
] as const) {
  console.log(`${title}: ${some.length} packages\n`);
  for (const [licence, names] of [...grouped(some)].sort(([one], [other]) => one.localeCompare(other)))
    console.log(`${licence} (${shipped[licence] ?? toolsOnly[licence] ?? reasonFor(names[0] ?? "")})\n  ${names.join(", ")}\n`);
}
const scripts = packages
  .filter(({ hasInstallScript }) => hasInstallScript)
  .map(({ name }) => `${name} (${allowScripts[name] ? "allowed" : "not run"})`);
console.log(`Scripts on installing: ${[...new Set(scripts)].join(", ")}`);

const problems = licenceProblems(packages, allowScripts);
for (const problem of problems) console.error(problem);
if (problems.length > 0) process.exitCode = 1;

function grouped(some: readonly LockedPackage[]): Map<string, string[]> {
  const groups = new Map<string, string[]>();
  for (const one of some) groups.set(licenceOf(one), [...new Set([...(groups.get(licenceOf(one)) ?? []), one.name])]);
  return groups;
}

function reasonFor(name: string): string {
  return byName[name]?.reason ?? "not on the list";
}
