import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import http from "node:http";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { fileServer, listenFrom } from "../../src/build/serve.mjs";

const folder = mkdtempSync(path.join(tmpdir(), "gylebook-serve-"));
let server: http.Server;
let port: number;
beforeAll(async () => {
  writeFileSync(path.join(folder, "page.html"), "<p>a page</p>");
  server = (await fileServer(folder)) as http.Server;
  port = await listenFrom(server, 5200);
});
afterAll(() => {
  server.close();
  rmSync(folder, { recursive: true });
});

const ask = (options: http.RequestOptions) =>
  new Promise<http.IncomingMessage>((resolve, reject) => {
    http
      .request({ host: "127.0.0.1", port, path: "/page.html", ...options }, (answer) => {
        answer.resume();
        resolve(answer);
      })
      .on("error", reject)
      .end();
  });

it.each([undefined, "localhost", "127.0.0.1"])("a file is read by the name %s, and no browser guesses what it is", async (name) => {
  for (const method of ["GET", "HEAD"]) {
    const { statusCode, headers } = await ask({ method, ...(name && { headers: { host: `${name}:${port}` } }) });
    expect([statusCode, headers["x-content-type-options"]]).toEqual([200, "nosniff"]);
  }
});

it.each(["club.example", `club.example:5200`, "localhost.club.example"])("another's name, “%s”, is not answered to", async (host) => {
  expect((await ask({ headers: { host } })).statusCode).toBe(421);
});

it.each(["POST", "PUT", "DELETE", "OPTIONS"])("%s is refused", async (method) => {
  const { statusCode, headers } = await ask({ method });
  expect([statusCode, headers.allow]).toEqual([405, "GET, HEAD"]);
});

it("what is not there is said to be not there", async () => {
  expect((await ask({ path: "/other.html" })).statusCode).toBe(404);
});
