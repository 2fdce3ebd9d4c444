import { createHash } from "node:crypto";
import { cpSync, existsSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";

/** A name that follows from the file's content: what the bundler gave a chunk, or what is given here. */
export const hashed = /\.[0-9a-f]{10}\.(?:js|css)$/;

/** The manifest and the bench ask for this one by its plain name too. */
const plainToo = ["functions.js"];

const reference = /((?:src|href)=")([^":?#]+\.(?:js|css))(")/g;

/**
 * Gives every script and style that these pages load a name with a hash of its content, and rewrites the pages. A browser may
 * then keep the file for ever, and never mixes two versions. The pages themselves keep their names: others know them.
 */
export function hashNames(folder: string, pages: readonly string[]): void {
  const names = new Map<string, string>();
  for (const page of pages.filter((page) => existsSync(path.join(folder, page)))) {
    const inFolder = path.posix.dirname(page);
    const rewritten = readFileSync(path.join(folder, page), "utf8").replace(
      reference,
      (_, before: string, target: string, after: string) => {
        const file = path.posix.join(inFolder, target);
        if (hashed.test(file)) return `${before}${target}${after}`;
        const name = names.get(file) ?? hashedName(folder, file);
        names.set(file, name);
        return `${before}${path.posix.join(path.posix.dirname(target), path.posix.basename(name))}${after}`;
      },
    );
    writeFileSync(path.join(folder, page), rewritten);
  }
  for (const [file, name] of names) {
    cpSync(path.join(folder, file), path.join(folder, name));
    if (!plainToo.includes(file)) rmSync(path.join(folder, file));
  }
}

function hashedName(folder: string, file: string): string {
  const hash = createHash("sha256")
    .update(readFileSync(path.join(folder, file)))
    .digest("hex")
    .slice(0, 10);
  const { dir, name, ext } = path.posix.parse(file);
  return path.posix.join(dir, `${name}.${hash}${ext}`);
}
