// @ts-check
// The port at which the bench was first served from this folder.
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";

/** @param {string} root the project's folder */
const note = (root) => path.join(root, ".cache/bench-port");

/** @param {string} root */
export function lastPort(root) {
  try {
    const port = Number(readFileSync(note(root), "utf8"));
    return Number.isInteger(port) && port > 0 && port < 65_536 ? port : undefined;
  } catch {
    return undefined;
  }
}

/**
 * @param {string} root
 * @param {number} port
 */
export function rememberPort(root, port) {
  try {
    mkdirSync(path.dirname(note(root)), { recursive: true });
    writeFileSync(note(root), String(port));
  } catch {
    // A folder that cannot be written to: the usual port is tried next time.
  }
}
