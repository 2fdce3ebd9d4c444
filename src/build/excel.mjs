// @ts-check
// `npm run excel`: the add-in in the Excel of this computer, from the files under dist/, until Ctrl-C or `npm run excel:stop`.
//   --workbook file.xlsx   opens this workbook with it
//   --web address          opens this workbook on the web with it
//   --debug                builds scripts that can be read, with source maps
import { readFileSync, rmSync, existsSync, mkdirSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { parseArgs } from "node:util";
import { clicks, debugging, installCertificate, sideload } from "./excel-tools.mjs";
import { ensureInstalled } from "./install.mjs";
import { npm, root, runTypeScript, stopAll, whenStopped } from "./run.mjs";
import { fileServer, listenFrom } from "./serve.mjs";
import { isStale } from "./stale.mjs";

const { values: options } = parseArgs({
  options: { workbook: { type: "string" }, web: { type: "string" }, debug: { type: "boolean", default: false } },
});
if (options.workbook !== undefined && !existsSync(options.workbook)) fail(`there is no file ${options.workbook}`);
if (options.web !== undefined && !/^https:\/\//.test(options.web))
  fail("--web takes the https address of a workbook that is open on the web");

/** There while we serve; `npm run excel:stop` takes it away, and we go. */
const running = path.join(root, ".cache/excel-running");
/** @type {(() => void) | undefined} */
let closeServer;
async function stop() {
  closeServer?.();
  rmSync(running, { force: true });
  await stopAll();
  console.log("\nStopped. `npm stop` also takes the add-in off Excel's list.");
  process.exit(0);
}
whenStopped(stop);

if (!(await ensureInstalled(root))) process.exit(1);
if (options.debug) await build("--debug");
else if (isStale(root)) await build();

console.log("Excel takes an add-in from https only: Microsoft's tool makes a certificate for localhost (it may ask for your password).");
if ((await npm(installCertificate)) !== 0) fail("There is no certificate for https://localhost: see what the tool said above.");
const server = await fileServer(path.join(root, "dist"), certificate());
const port = await listenFrom(server, 3000, 1).catch(() =>
  fail("Port 3000 is taken, and manifest.xml points there: stop what uses it, perhaps another `npm run excel`."),
);
closeServer = () => {
  server.close();
  server.closeAllConnections();
};
mkdirSync(path.dirname(running), { recursive: true });
writeFileSync(running, String(process.pid));
setInterval(() => existsSync(running) || void stop(), 500);
console.log(`Serving dist/ at https://localhost:${port}/. Ctrl-C or \`npm stop\` ends it.`);

const command = sideload(
  process.platform,
  options.web === undefined ? { document: options.workbook } : { document: options.web, web: true },
);
if (command === undefined || (await npm(command)) !== 0) console.log(clicks(path.join(root, "manifest.xml")));
if (options.debug) console.log(debugging);

/** @param {string[]} args */
async function build(...args) {
  if ((await runTypeScript("src/build/build.ts", ...args)) !== 0) fail("The build failed.");
}

function certificate() {
  const folder = path.join(os.homedir(), ".office-addin-dev-certs");
  try {
    return { key: readFileSync(path.join(folder, "localhost.key")), cert: readFileSync(path.join(folder, "localhost.crt")) };
  } catch {
    return fail(`The tool left no certificate in ${folder}.`);
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
