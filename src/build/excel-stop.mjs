// @ts-check
// `npm stop`, also called `npm run excel:stop`: ends `npm run excel` wherever it runs, and takes the add-in off Excel's list for developers.
import { existsSync, rmSync } from "node:fs";
import path from "node:path";
import { unregister } from "./excel-tools.mjs";
import { npm, root } from "./run.mjs";

const running = path.join(root, ".cache/excel-running");
console.log(existsSync(running) ? "The server ends." : "No server was running.");
// The server looks for this file twice a second.
rmSync(running, { force: true });

const command = unregister(process.platform);
if (command !== undefined) process.exitCode = await npm(command);
else console.log("Put in by hand? On the web: Home > Add-ins > More Add-ins > My Add-ins, the three dots on Gylebook, Remove.");
console.log("The certificate stays for the next time; `npx office-addin-dev-certs uninstall` takes it away.");
