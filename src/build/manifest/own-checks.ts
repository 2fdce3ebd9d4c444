import type { Document } from "@xmldom/xmldom";
import { children, elements, resources, text } from "./document";
import type { Site } from "./site";

/** Checks on what stands in the manifest itself. Each gives its complaints, or none. */
export type Check = (manifest: Document, site: Site) => string[];

const guid: Check = (manifest) =>
  /^[0-9a-f]{8}-[0-9a-f]{4}-[1-5][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/i.test(text(manifest, "Id"))
    ? []
    : [`Id "${text(manifest, "Id")}" is not a GUID`];

const version: Check = (manifest, site) =>
  text(manifest, "Version") === `${site.version}.0`
    ? []
    : [`Version "${text(manifest, "Version")}" is not ${site.version}.0, the package's version in four parts`];

/** The order that Excel insists on: https://learn.microsoft.com/office/dev/add-ins/develop/manifest-element-ordering */
const order: Check = (manifest) => {
  const wanted = [
    "Id",
    "Version",
    "ProviderName",
    "DefaultLocale",
    "DisplayName",
    "Description",
    "IconUrl",
    "HighResolutionIconUrl",
    "SupportUrl",
    "AppDomains",
    "Hosts",
    "Requirements",
    "DefaultSettings",
    "Permissions",
    "VersionOverrides",
  ];
  const found = children(manifest.documentElement).map((element) => element.localName ?? "");
  return found.join() === wanted.join() ? [] : [`the top elements are ${found.join(", ")}; they must be ${wanted.join(", ")}`];
};

const runtimesFirst: Check = (manifest) => {
  const host = elements(manifest, "Host").find((element) => element.hasAttribute("xsi:type")) ?? null;
  return children(host)[0]?.localName === "Runtimes" ? [] : ["Runtimes must be the first element of the Workbook host"];
};

const requirements: Check = (manifest) => {
  const sets = elements(manifest, "Set").map((set) => `${set.getAttribute("Name")} ${set.getAttribute("MinVersion")}`);
  return ["SharedRuntime 1.1", "CustomFunctionsRuntime 1.3"]
    .filter((wanted) => !sets.includes(wanted))
    .map((wanted) => `the requirement set ${wanted} is missing`);
};

/** With a shared runtime a pane of its own would start a second page. */
const noTaskpaneId: Check = (manifest) =>
  elements(manifest, "TaskpaneId").length === 0 ? [] : ["TaskpaneId must not stand beside a shared runtime"];

const idLengths: Check = (manifest) =>
  elements(manifest, "*")
    .flatMap((element) => [element.getAttribute("id"), element.getAttribute("resid")])
    .filter((id) => id !== null && id.length > 32)
    .map((id) => `the id "${id}" is longer than 32 characters`);

const limits = { ShortStrings: 125, LongStrings: 250, Urls: 2048, Images: 2048 };
const textLengths: Check = (manifest) =>
  Object.entries(limits).flatMap(([group, limit]) =>
    elements(manifest, group)
      .flatMap(children)
      .filter((entry) => (entry.getAttribute("DefaultValue") ?? "").length > limit)
      .map((entry) => `${entry.getAttribute("id")} is longer than the ${limit} characters of ${group}`),
  );

const residsResolve: Check = (manifest) => {
  const known = resources(manifest);
  const used = elements(manifest, "*")
    .map((element) => element.getAttribute("resid"))
    .filter((id) => id !== null);
  return [...new Set(used)].filter((id) => !known.has(id)).map((id) => `resid "${id}" is not among the Resources`);
};

const httpsOnly: Check = (manifest) =>
  [
    ...elements(manifest, "*").map((element) => element.getAttribute("DefaultValue")),
    ...elements(manifest, "AppDomain").map((element) => element.textContent),
  ]
    .filter((value) => value !== null && /^[a-z]+:\/\//i.test(value) && !value.startsWith("https://"))
    .map((value) => `${value} is not https`);

/** One page runs functions, pane and commands: all four places name it by the same resid. */
const onePage: Check = (manifest) => {
  const action = elements(manifest, "Action").find((element) => element.getAttribute("xsi:type") === "ShowTaskpane") ?? null;
  const places = {
    Runtime: elements(manifest, "Runtime")[0]?.getAttribute("resid"),
    Page: children(elements(manifest, "Page")[0] ?? null)[0]?.getAttribute("resid"),
    FunctionFile: elements(manifest, "FunctionFile")[0]?.getAttribute("resid"),
    Action: children(action)
      .find((element) => element.localName === "SourceLocation")
      ?.getAttribute("resid"),
  };
  const words = Object.entries(places).map(([place, resid]) => `${place} ${resid ?? "nothing"}`);
  return new Set(Object.values(places)).size === 1 && places.Runtime ? [] : [`one page must serve all, but: ${words.join(", ")}`];
};

/** No more than it takes to write a batch sheet, and no page from elsewhere in the pane. */
const noMoreThanNeeded: Check = (manifest) => {
  const permissions = text(manifest, "Permissions");
  const own = elements(manifest, "SourceLocation")
    .map((place) => place.getAttribute("DefaultValue") ?? "")
    .filter((address) => URL.canParse(address))
    .map((address) => new URL(address).origin);
  const strangers = elements(manifest, "AppDomain")
    .map((domain) => domain.textContent ?? "")
    .filter((domain) => URL.canParse(domain) && domain.startsWith("https://") && !own.includes(new URL(domain).origin));
  return [
    ...(permissions === "ReadWriteDocument" ? [] : [`Permissions "${permissions}" is not ReadWriteDocument`]),
    ...strangers.map((domain) => `the AppDomain ${domain} is not where the add-in comes from`),
  ];
};

export const ownChecks: readonly Check[] = [
  guid,
  version,
  order,
  runtimesFirst,
  requirements,
  noTaskpaneId,
  idLengths,
  textLengths,
  residsResolve,
  httpsOnly,
  onePage,
  noMoreThanNeeded,
];
