import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import http from "node:http";
import type { AddressInfo } from "node:net";
import os from "node:os";
import path from "node:path";
import sirv from "sirv";
import { makeSite } from "../../../src/build/site/make-site";
import { dist } from "./built-site";

export interface StaticSite {
  /** Where the folder begins, with its path and without the last slash. */
  readonly address: string;
  close(): Promise<void>;
}

/** Makes the folder for https://club.example/gylebook/ and serves it at that path, with the headers of its `_headers`, as a host of static sites does. */
export async function serveStaticSite(): Promise<StaticSite> {
  const folder = mkdtempSync(path.join(os.tmpdir(), "gylebook-site-"));
  makeSite("https://club.example/gylebook/", dist, folder);
  const rules = headerRules(readFileSync(path.join(folder, "_headers"), "utf8"));
  const files = sirv(folder, { dev: true });
  const server = http.createServer((request, response) => {
    const place = (request.url ?? "").replace(/[?#].*$/, "");
    for (const [name, value] of headersFor(rules, place)) response.setHeader(name, value);
    const notThere = () => void response.writeHead(404).end();
    if (!place.startsWith("/gylebook/")) return notThere();
    request.url = place.slice("/gylebook".length);
    files(request, response, notThere);
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  return {
    address: `http://127.0.0.1:${(server.address() as AddressInfo).port}/gylebook`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => {
          rmSync(folder, { recursive: true, force: true });
          resolve();
        });
        server.closeAllConnections();
      }),
  };
}

type Rules = { place: string; headers: [name: string, value: string][] }[];

/** A path on a line of its own, its headers below it, indented; `#` begins a remark. */
function headerRules(text: string): Rules {
  const rules: Rules = [];
  for (const line of text.split("\n").filter((line) => line.trim() !== "" && !line.startsWith("#"))) {
    if (line.startsWith("/")) rules.push({ place: line, headers: [] });
    else rules.at(-1)?.headers.push([line.slice(0, line.indexOf(":")).trim(), line.slice(line.indexOf(":") + 1).trim()]);
  }
  return rules;
}

const headersFor = (rules: Rules, place: string) =>
  rules
    .filter((rule) => (rule.place.endsWith("*") ? place.startsWith(rule.place.slice(0, -1)) : rule.place === place))
    .flatMap(({ headers }) => headers);
