// @ts-check
// Serves a folder of files on this computer only.
import { createHash } from "node:crypto";
import { realpathSync } from "node:fs";
import http from "node:http";
import https from "node:https";

const host = "127.0.0.1";

/** A page elsewhere whose address was made to point at this computer asks for another host's name, and gets nothing. */
const ownNames = /^(?:localhost|127\.0\.0\.1)(?::\d+)?$/;

/** By this a server of ours is known, and which folder it serves, without telling the folder. */
const markName = "x-gylebook-folder";

/** @param {string} folder */
const markOf = (folder) => createHash("sha256").update(realpathSync(folder)).digest("hex");

/**
 * The server for the built files. The root address leads to the bench.
 * @param {string} folder
 * @param {{ key: Buffer, cert: Buffer }} [certificate] makes it https
 */
export async function fileServer(folder, certificate) {
  const { default: sirv } = await import("sirv");
  // `dev` reads the disk for each request and forbids caching, so that a new build shows on the next reload.
  const files = sirv(folder, {
    dev: true,
    etag: true,
    // Excel on the web reads the list of functions from its own address.
    setHeaders: (response, place) => void (place === "/functions.json" && response.setHeader("access-control-allow-origin", "*")),
  });
  const mark = markOf(folder);
  /** @type {import("node:http").RequestListener} */
  const answer = (request, response) => {
    response.setHeader("x-content-type-options", "nosniff");
    response.setHeader(markName, mark);
    const plain = { "content-type": "text/plain; charset=utf-8" };
    if (!ownNames.test(request.headers.host ?? "")) {
      response.writeHead(421, plain).end("This server answers to localhost and 127.0.0.1 only.\n");
      return;
    }
    if (request.method !== "GET" && request.method !== "HEAD") {
      response.writeHead(405, { ...plain, allow: "GET, HEAD" }).end("Files can be read here, nothing else.\n");
      return;
    }
    if (request.url === "/" || request.url?.startsWith("/?")) {
      response.writeHead(302, { location: "/bench/" }).end();
      return;
    }
    files(request, response, () => {
      response.writeHead(404, plain).end("There is no such file here.\n");
    });
  };
  return certificate === undefined ? http.createServer(answer) : https.createServer(certificate, answer);
}

/**
 * Whether a server of ours for this very folder answers at the port.
 * @param {string} folder
 * @param {number} port
 */
export async function isServedAt(folder, port) {
  try {
    const answer = await fetch(`http://${host}:${port}/`, { method: "HEAD", redirect: "manual", signal: AbortSignal.timeout(2000) });
    return answer.headers.get(markName) === markOf(folder);
  } catch {
    return false;
  }
}

/**
 * Listens on the first free port from `port` upward, stepping over those that are taken.
 * @param {import("node:http").Server | import("node:https").Server} server
 * @param {number} port
 * @param {number} [attempts]
 * @returns {Promise<number>} the port
 */
export async function listenFrom(server, port, attempts = 100) {
  for (let candidate = port; candidate < port + attempts; candidate++) {
    if (await listen(server, candidate)) return candidate;
  }
  throw new Error(`no free port from ${port} to ${port + attempts - 1}`);
}

/**
 * @param {import("node:net").Server} server
 * @param {number} port
 * @returns {Promise<boolean>} false when the port is taken
 */
function listen(server, port) {
  return new Promise((resolve, reject) => {
    const failed = (/** @type {NodeJS.ErrnoException} */ problem) => {
      server.off("listening", listening);
      // EACCES: Windows keeps some ranges of ports to itself.
      if (problem.code === "EADDRINUSE" || problem.code === "EACCES") resolve(false);
      else reject(problem);
    };
    const listening = () => {
      server.off("error", failed);
      resolve(true);
    };
    server.once("error", failed).once("listening", listening).listen(port, host);
  });
}
