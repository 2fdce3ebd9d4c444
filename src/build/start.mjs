// @ts-check
// `npm start`: installs and builds what is missing, serves the bench on this computer, opens it in the browser.
//   --no-open   do not open a browser (so does BROWSER=none, or CI)
//   --excel     serve for Excel instead: https://localhost:3000, with the certificate of office-addin-dev-certs
import { readFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { ensureInstalled } from "./install.mjs";
import { openBrowser, wantsBrowser } from "./open-browser.mjs";
import { root, runTypeScript, stopAll } from "./run.mjs";
import { fileServer, listenFrom } from "./serve.mjs";
import { isStale } from "./stale.mjs";

const args = process.argv.slice(2);
const forExcel = args.includes("--excel");

/** @type {(() => void) | undefined} */
let closeServer;
async function stop() {
  closeServer?.();
  await stopAll();
  console.log("\nStopped.");
  process.exit(0);
}
process.on("SIGINT", stop).on("SIGTERM", stop);
// npm starts us through a shell, and some shells die of a signal without handing it on: then nobody is left to stop us.
const parent = process.ppid;
if (process.env["npm_lifecycle_event"] !== undefined) setInterval(() => process.ppid !== parent && stop(), 500).unref();

if (!(await ensureInstalled(root))) fail("The dependencies could not be installed.");
if (isStale(root) && (await runTypeScript("src/build/build.ts")) !== 0) fail("The build failed.");

const server = await fileServer(path.join(root, "dist"), forExcel ? certificate() : undefined);
const port = forExcel ? await listenFrom(server, 3000, 1) : await listenFrom(server, 4173);
closeServer = () => {
  server.close();
  server.closeAllConnections();
};

if (forExcel) {
  console.log(`Serving the add-in for Excel at https://localhost:${port}: load manifest.xml in Excel. Ctrl-C stops.`);
} else {
  const address = `http://127.0.0.1:${port}/`;
  console.log(`The bench is at ${address}. Ctrl-C stops.`);
  if (wantsBrowser(args, process.env, process.platform)) await openBrowser(address);
}

/** Excel takes an add-in from https only; Microsoft's own tool makes a certificate that this computer trusts. */
function certificate() {
  const folder = path.join(os.homedir(), ".office-addin-dev-certs");
  try {
    return { key: readFileSync(path.join(folder, "localhost.key")), cert: readFileSync(path.join(folder, "localhost.crt")) };
  } catch {
    return fail("Excel needs a certificate for localhost: run `npx office-addin-dev-certs install` once.");
  }
}

/**
 * @param {string} message
 * @returns {never}
 */
function fail(message) {
  console.error(message);
  process.exit(1);
}
