import { existsSync, readdirSync } from "node:fs";
import path from "node:path";
import { policies } from "../policies.mjs";
import { hashed } from "./hash-names";

/** What a server is to say with a file, or with everything in a folder (a place that ends in `*`). */
export interface HeaderRule {
  readonly place: string;
  readonly headers: Readonly<Record<string, string>>;
}

const always = { "X-Content-Type-Options": "nosniff", "Referrer-Policy": "no-referrer" };
/** Asked for anew each time; a server that knows its files' state answers "not changed" in a few bytes. */
const askAgain = { ...always, "Cache-Control": "no-cache" };
const forEver = { ...always, "Cache-Control": "public, max-age=31536000, immutable" };
const page = (policy: string) => ({ ...askAgain, "Content-Security-Policy": policy });

/**
 * Excel on the web shows the pane in a frame of its own, at addresses that Microsoft does not list and that differ between
 * customers; so nobody is kept from framing it. All other pages stay within the site.
 */
const unframed = "; frame-ancestors 'self'";

/** One rule for each place, and never two for one file: some servers would send both. */
export function headerRules(site: string): HeaderRule[] {
  const hashedIn = (folder: string) =>
    (existsSync(path.join(site, folder)) ? readdirSync(path.join(site, folder)) : [])
      .filter((name) => hashed.test(name))
      .map((name) => path.posix.join(folder, name));
  const has = ({ place }: HeaderRule) => existsSync(path.join(site, place.replace(/\*$/, "")));
  return [
    // Excel on the web reads the list of functions from its own address.
    { place: "functions.json", headers: { ...askAgain, "Access-Control-Allow-Origin": "*" } },
    { place: "functions.js", headers: askAgain },
    { place: "manifest.xml", headers: askAgain },
    { place: "licences.txt", headers: askAgain },
    { place: "taskpane.html", headers: page(policies.pane) },
    { place: "bench/taskpane.html", headers: page(policies.benchPane + unframed) },
    { place: "bench/index.html", headers: page(policies.bench + unframed) },
    { place: "index.html", headers: page(policies.reading + unframed) },
    { place: "install.html", headers: page(policies.reading + unframed) },
    { place: "help/*", headers: page(policies.reading + unframed) },
    { place: "guide/*", headers: page(policies.reading + unframed) },
    { place: "assets/*", headers: askAgain },
    { place: "pane/*", headers: forEver },
    { place: "bench/parts/*", headers: forEver },
    ...[...hashedIn(""), ...hashedIn("bench")].map((place) => ({ place, headers: forEver })),
  ].filter(has);
}

/** `_headers`, as several hosts of static sites read it: a path, then its headers, indented. */
export function headersFile(rules: readonly HeaderRule[], basePath: string): string {
  const blocks = rules.flatMap(({ place, headers }) =>
    addressesOf(place).map((address) =>
      [basePath + address, ...Object.entries(headers).map(([name, value]) => `  ${name}: ${value}`)].join("\n"),
    ),
  );
  return `# Put this file at the root of the site. Paths begin there.\n${blocks.join("\n\n")}\n`;
}

/** A page may also be asked for by its folder, or, where a host leaves endings off, by its bare name. */
function addressesOf(place: string): string[] {
  if (place.endsWith("index.html")) return [place, place.slice(0, -"index.html".length)];
  return place.endsWith(".html") ? [place, place.slice(0, -".html".length)] : [place];
}

/** The same in words and as lines to copy, for servers that have another way. */
export function otherServersNote(rules: readonly HeaderRule[], base: string): string {
  const groups = new Map<string, string[]>();
  for (const { place, headers } of rules) {
    const lines = Object.entries(headers)
      .map(([name, value]) => `    ${name}: ${value}`)
      .join("\n");
    groups.set(lines, [...(groups.get(lines) ?? []), place]);
  }
  const said = [...groups].map(([lines, places]) => `${places.join("\n")}\n${lines}`);
  return `What the web server is to say with the files of ${base}

Nothing works without: https; and Access-Control-Allow-Origin: * with functions.json, which Excel on the web reads from
its own address. Everything else is caution and speed: the pages carry their security policy themselves.
Types: .json application/json, .js text/javascript, .xml text/xml, .xlsx application/vnd.openxmlformats-officedocument.spreadsheetml.sheet

Hosts that read a file _headers (at the root of the site): it is there, beside this note. Delete it elsewhere.
GitHub Pages sets no headers of ours and needs none: it allows every address to read its files, and keeps nothing longer than ten minutes.
nginx:   location = ${new URL(base).pathname}functions.json { add_header Access-Control-Allow-Origin *; }
Apache:  <Files "functions.json">
           Header set Access-Control-Allow-Origin "*"
         </Files>

Uploading a newer version: put the new files over the old ones and leave the old ones with a hash in their name for a day,
since a pane that is open still asks for them. The pane is new the next time it is opened. A longer list of functions reaches
Excel within a day; a member who adds the new manifest.xml (install.html says how) has it at once.

File by file (* stands for everything in the folder):

${said.join("\n\n")}
`;
}
