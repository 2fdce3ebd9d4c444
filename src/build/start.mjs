// @ts-check
// `npm start`: installs and builds what is missing, serves the bench on this computer, opens it in the browser.
//   --no-open   do not open a browser (so does BROWSER=none, or CI)
import path from "node:path";
import { ensureInstalled } from "./install.mjs";
import { openBrowser, wantsBrowser } from "./open-browser.mjs";
import { root, runTypeScript, stopAll } from "./run.mjs";
import { fileServer, listenFrom } from "./serve.mjs";
import { isStale } from "./stale.mjs";

const args = process.argv.slice(2);

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

if (!(await ensureInstalled(root))) process.exit(1);
if (isStale(root) && (await runTypeScript("src/build/build.ts")) !== 0) fail("The build failed.");

const server = await fileServer(path.join(root, "dist"));
const port = await listenFrom(server, 4173);
closeServer = () => {
  server.close();
  server.closeAllConnections();
};

const address = `http://127.0.0.1:${port}/`;
console.log(`The bench is at ${address}. Ctrl-C stops.`);
if (wantsBrowser(args, process.env, process.platform)) await openBrowser(address);

/**
 * @param {string} message
 * @returns {never}
 */
function fail(message) {
  console.error(message);
  process.exit(1);
}
