import { existsSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { root } from "../run.mjs";
import { licenceOf } from "./check";
import { lockedPackages } from "./lock";

/** licences.txt: ours, and the notice of every package that may be in what we ship, each text once. */
export function notices(): string {
  const byText = new Map<string, string[]>();
  for (const one of lockedPackages().filter(({ toolOnly, place }) => !toolOnly && existsSync(path.join(root, place)))) {
    const text = noticeIn(path.join(root, one.place)) ?? `The package carries no text; it states the licence ${licenceOf(one)}.`;
    byText.set(text, [...(byText.get(text) ?? []), `${one.name} ${one.version} (${licenceOf(one)})`]);
  }
  const parts = [...byText].map(([text, names]) => `${names.join("\n")}\n\n${text}`);
  return [`Gylebook\n\n${readFileSync(path.join(root, "LICENSE"), "utf8").trim()}`, ...parts].join(`\n\n${"-".repeat(72)}\n\n`) + "\n";
}

/** The licence file of a package, with a NOTICE where it has one. */
function noticeIn(folder: string): string | undefined {
  const files = readdirSync(folder)
    .filter((name) => /^(licen[cs]e|copying|notice)(\.(md|txt))?$/i.test(name))
    .sort();
  const texts = files.map((name) => readFileSync(path.join(folder, name), "utf8").replaceAll("\r\n", "\n").trim());
  return texts.length === 0 ? undefined : texts.join("\n\n");
}
