// @ts-check
// `npm start`: installs and builds what is missing, serves the bench on this computer, opens it in the browser.
//   --no-open   do not open a browser (so does BROWSER=none, or CI)
// A browser keeps work for one address, port included: the port of last time is taken again, or the server that is there already.
import path from "node:path";
import { ensureInstalled } from "./install.mjs";
import { openBrowser, wantsBrowser } from "./open-browser.mjs";
import { root, runTypeScript, stopAll, whenStopped } from "./run.mjs";
import { lastPort, rememberPort } from "./last-port.mjs";
import { fileServer, isServedAt, listenFrom } from "./serve.mjs";
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
whenStopped(stop);

if (!(await ensureInstalled(root))) process.exit(1);
if (isStale(root) && (await runTypeScript("src/build/build.ts")) !== 0) fail("The build failed.");

const dist = path.join(root, "dist");
const usual = 4173;
const last = lastPort(root);
/** @param {number} port */
const addressAt = (port) => `http://127.0.0.1:${port}/`;

if (await isServedAt(dist, last ?? usual)) {
  const there = addressAt(last ?? usual);
  console.log(`The bench is served at ${there} already, by an earlier npm start.`);
  if (wantsBrowser(args, process.env, process.platform)) await openBrowser(there);
  process.exit(0);
}

const server = await fileServer(dist);
const port = await listenFrom(server, last ?? usual);
closeServer = () => {
  server.close();
  server.closeAllConnections();
};
if (last === undefined) rememberPort(root, port);
else if (port !== last)
  console.log(
    `Another program has taken port ${last}, where the bench was. Work that your browser kept there is not lost, but is seen only at ${addressAt(last)}: end that program and start again to see it.`,
  );

const address = addressAt(port);
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
