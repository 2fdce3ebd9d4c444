import { byName, shipped, toolsOnly } from "./allowed";
import type { LockedPackage } from "./lock";

/** Which packages may run a script when they are installed: `allowScripts` of package.json, true or false for each. */
export type AllowedScripts = Readonly<Record<string, boolean>>;

/** What is wrong, in words; empty when nothing is. */
export function licenceProblems(packages: readonly LockedPackage[], allowScripts: AllowedScripts): string[] {
  return [
    ...packages.flatMap((one) => licenceProblem(one) ?? []),
    ...packages
      .filter(({ hasInstallScript, name }) => hasInstallScript && !(name in allowScripts))
      .map(
        ({ name }) => `${name} has a script that runs on installing: read it, then allow or forbid it under allowScripts in package.json`,
      ),
    ...Object.keys(allowScripts)
      .filter((name) => !packages.some((one) => one.name === name && one.hasInstallScript))
      .map((name) => `allowScripts names ${name}, which has no such script`),
    ...Object.keys(byName)
      .filter((name) => !packages.some((one) => one.name === name))
      .map((name) => `the exception for ${name} is for a package that is not used`),
  ];
}

export function licenceOf({ name, licence }: LockedPackage): string {
  return byName[name]?.licence ?? licence ?? "none stated";
}

function licenceProblem(one: LockedPackage): string | undefined {
  const exception = byName[one.name];
  if (exception)
    return exception.toolOnly && !one.toolOnly
      ? `${one.name} may be used for building and testing only (${exception.reason}), but is among the dependencies that ship`
      : undefined;
  const licence = licenceOf(one);
  if (licence in shipped || (one.toolOnly && licence in toolsOnly)) return undefined;
  return `${one.name} ${one.version}: the licence "${licence}" is not on the list${licence in toolsOnly ? " of those that may ship" : ""} (src/build/licences/allowed.ts)`;
}
