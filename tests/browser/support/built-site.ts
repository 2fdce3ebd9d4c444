import { existsSync } from "node:fs";
import type { Server } from "node:http";
import type { AddressInfo } from "node:net";
import { fileURLToPath } from "node:url";
import { fileServer } from "../../../src/build/serve.mjs";

export const dist = fileURLToPath(new URL("../../../dist", import.meta.url));

export interface BuiltSite {
  origin: string;
  close(): Promise<void>;
}

/** Serves what `npm run build` made, on a free port of this computer. */
export async function serveBuiltSite(): Promise<BuiltSite> {
  for (const file of ["functions.js", "functions.json", "bench/index.html", "bench/bench.js", "bench/taskpane.html"]) {
    if (!existsSync(`${dist}/${file}`)) throw new Error(`dist/${file} is missing: run \`npm run build\` first.`);
  }
  const server = (await fileServer(dist)) as Server;
  await new Promise<void>((resolve, reject) => server.once("error", reject).listen(0, "127.0.0.1", resolve));
  return {
    origin: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
