// @ts-check
// Runs other programs for the scripts of this folder, and takes them along when the script itself is told to stop.
import { spawn } from "node:child_process";
import { accessSync, constants, mkdirSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";

export const root = fileURLToPath(new URL("../../", import.meta.url));

/** @type {Set<import("node:child_process").ChildProcess>} */
const running = new Set();
let stopping = false;

/**
 * Runs a program in the project's folder with our own output, or with its words handed to `hear`, for programs that run
 * side by side. Resolves with its exit code (1 when it could not start).
 * @typedef {{ env?: Record<string, string>, cwd?: string, hear?: ((words: string) => void) | undefined }} RunOptions
 * @param {string} program
 * @param {readonly string[]} args
 * @param {RunOptions & { shell?: boolean }} [options]
 * @returns {Promise<number>}
 */
export function run(program, args, { env = {}, shell = false, cwd = root, hear } = {}) {
  return new Promise((resolve) => {
    const child = spawn(program, [...args], {
      cwd,
      shell,
      stdio: hear ? ["ignore", "pipe", "pipe"] : "inherit",
      env: { ...process.env, ...env },
    });
    running.add(child);
    for (const stream of [child.stdout, child.stderr]) stream?.setEncoding("utf8").on("data", (words) => hear?.(words));
    child.on("error", (problem) => {
      running.delete(child);
      console.error(`${program}: ${problem.message}`);
      resolve(1);
    });
    // "close" comes when its last words have been heard, too.
    child.on(hear ? "close" : "exit", (code) => {
      running.delete(child);
      // Whoever waits for a program that we stopped ourselves is not to go on.
      if (!stopping) resolve(code ?? 1);
    });
  });
}

/**
 * Runs a script of this project with the Node that runs us, TypeScript included.
 * @param {string} script path from the project's folder
 * @param {...string} args
 */
export const runTypeScript = (script, ...args) => run(process.execPath, ["--import", "tsx", script, ...args]);

/**
 * Runs npm: the one that started us where there is one, else the one on the path.
 * @param {readonly string[]} args
 * @param {RunOptions} [options]
 */
export function npm(args, options = {}) {
  const own = process.env["npm_execpath"];
  const cache = npmCache(process.env);
  /** @type {Record<string, string>} */
  const env = { ...options.env, ...(cache === undefined ? {} : { npm_config_cache: cache }) };
  return own !== undefined && own.endsWith(".js")
    ? run(process.execPath, [own, ...args], { ...options, env })
    : run("npm", args, { ...options, env, shell: process.platform === "win32" });
}

/**
 * A cache for npm below the project, where npm's own, in the home folder, cannot be written: npm would install nothing then.
 * @param {Record<string, string | undefined>} env npm names its cache in it
 * @param {string} [home]
 * @returns {string | undefined}
 */
export function npmCache(env, home = os.homedir()) {
  const cache = env["npm_config_cache"] ?? path.join(home, ".npm");
  try {
    mkdirSync(cache, { recursive: true });
    accessSync(cache, constants.W_OK);
    return undefined;
  } catch {
    return path.join(root, ".cache/npm");
  }
}

/** Stops what is running, and waits until it has gone. */
export async function stopAll() {
  stopping = true;
  await Promise.all(
    [...running].map((child) => {
      const gone = new Promise((resolve) => child.once("exit", resolve));
      child.kill("SIGTERM");
      return gone;
    }),
  );
}

/**
 * What to do when somebody ends this script.
 * @param {() => unknown} stop
 */
export function whenStopped(stop) {
  process.on("SIGINT", stop).on("SIGTERM", stop);
  // npm starts us through a shell, and some shells die of a signal without handing it on: then nobody is left to stop us.
  const parent = process.ppid;
  if (process.env["npm_lifecycle_event"] !== undefined) setInterval(() => process.ppid !== parent && stop(), 500).unref();
}
